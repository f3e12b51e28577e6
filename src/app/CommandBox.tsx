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
  useFilter,
} from 'react-aria-components';
import { commandById, commands } from './commands.ts';
import { useApp, useUi } from './context.ts';
import { onMac } from './controls.tsx';
import { printed } from './shortcut.ts';

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
        <Dialog aria-label="Find a command">
          <Search />
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

function Search() {
  const app = useApp();
  const { contains } = useFilter({ sensitivity: 'base' });
  const state = app.board.getState();
  const ready = commands.filter((command) => command.id !== 'view.find' && command.enabled(state));
  return (
    <Autocomplete filter={contains}>
      <TextField aria-label="Find a command" autoFocus>
        <Input placeholder="What do you want to do?" />
      </TextField>
      <Menu
        className="menu"
        aria-label="Commands"
        renderEmptyState={() => <p className="empty">No command by that name.</p>}
        onAction={(id) => {
          app.ui.setState({ commandBox: false });
          commandById(String(id)).run(app);
        }}
      >
        {ready.map((command) => (
          <MenuItem
            key={command.id}
            id={command.id}
            textValue={`${command.title(state)} ${command.also ?? ''}`.trim()}
          >
            <span>{command.title(state)}</span>
            {command.shortcuts[0] && <Keyboard>{printed(command.shortcuts[0], onMac)}</Keyboard>}
          </MenuItem>
        ))}
      </Menu>
    </Autocomplete>
  );
}
