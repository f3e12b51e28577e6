import { useState } from 'react';
import {
  Autocomplete,
  Dialog,
  Input,
  Keyboard,
  Menu,
  MenuItem,
  Modal,
  ModalOverlay,
  TextField,
} from 'react-aria-components';
import type { BoardState } from '../canvas/board.ts';
import { words } from '../words/index.ts';
import { type Command, commandById, commands } from './commands.ts';
import { useApp, useUi } from './context.ts';
import { onMac } from './controls.tsx';
import { searchDistance } from './search-words.ts';
import { printed } from './shortcut.ts';

const says = words.shell.commandBox;

/** Everything that the program can do, found by typing. */
export function CommandBox() {
  const { ui } = useApp();
  const open = useUi((state) => state.commandBox);
  return (
    <ModalOverlay
      className="overlay top"
      isOpen={open}
      isDismissable
      onOpenChange={(next) => ui.setState({ commandBox: next })}
    >
      <Modal className="modal command-box">
        <Dialog aria-label={says.label}>
          <Search />
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

function Search() {
  const app = useApp();
  const [typed, setTyped] = useState('');
  const state = app.board.getState();
  const found = findCommands(typed, state);
  return (
    <Autocomplete inputValue={typed} onInputChange={setTyped}>
      <TextField aria-label={says.label} autoFocus>
        <Input placeholder={says.placeholder} />
      </TextField>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls is reached by keys */}
      <section className="found" aria-label={says.found} tabIndex={0}>
        <Menu
          className="menu"
          aria-label={says.list}
          disabledKeys={found.filter((command) => !command.enabled(state)).map(({ id }) => id)}
          renderEmptyState={() => <p className="empty">{says.nothing}</p>}
          onAction={(id) => {
            app.ui.setState({ commandBox: false });
            commandById(String(id)).run(app);
          }}
        >
          {found.map((command) => (
            <MenuItem key={command.id} id={command.id} textValue={command.title(state)}>
              <span>{command.title(state)}</span>
              {command.shortcuts[0] && <Keyboard>{printed(command.shortcuts[0], onMac)}</Keyboard>}
            </MenuItem>
          ))}
        </Menu>
      </section>
    </Autocomplete>
  );
}

/** Commands that a search finds, the nearest first; those that cannot be done now come last. */
export function findCommands(typed: string, state: BoardState): readonly Command[] {
  return commands
    .flatMap((command) => {
      if (command.id === 'view.find') return [];
      const distance = searchDistance(typed, command.title(state), command.also);
      return distance === null ? [] : [{ command, distance: distance + (command.enabled(state) ? 0 : 100) }];
    })
    .toSorted((a, b) => a.distance - b.distance)
    .map(({ command }) => command);
}
