import { useState } from 'react';
import {
  Button,
  Input,
  Menu,
  MenuItem,
  MenuTrigger,
  Popover,
  TextField,
  ToggleButton,
  ToggleButtonGroup,
} from 'react-aria-components';
import { formatFlow } from '../units/index.ts';
import { words } from '../words/index.ts';
import { commandById } from './commands.ts';
import { useApp, useBoard, useUi } from './context.ts';
import { CommandButton } from './controls.tsx';
import { Icon } from './icons.tsx';

const says = words.shell.schemes;

/** The schemes side by side, each with the air that it delivers at the speed being looked at. */
export function SchemeTabs() {
  const app = useApp();
  const schemes = useBoard((state) => state.job.schemes);
  const schemeId = useBoard((state) => state.schemeId);
  const renaming = useUi((state) => state.renaming);
  return (
    <nav className="scheme-tabs" aria-label={says.label}>
      <ToggleButtonGroup
        aria-label={says.scheme}
        selectionMode="single"
        disallowEmptySelection
        selectedKeys={[schemeId]}
        onSelectionChange={(keys) => {
          const [id] = keys;
          if (id !== undefined) app.board.set({ schemeId: String(id) });
        }}
      >
        {schemes.map((scheme) =>
          renaming === scheme.id ? (
            <NameField key={scheme.id} id={scheme.id} name={scheme.name} />
          ) : (
            <ToggleButton key={scheme.id} id={scheme.id} className="scheme-tab">
              <span className="scheme-name">{scheme.name}</span>
              <Delivered id={scheme.id} />
            </ToggleButton>
          ),
        )}
      </ToggleButtonGroup>
      {schemes.length > 1 && <CommandButton id="scheme.compare" icon="compare" />}
      <SchemeMenu />
    </nav>
  );
}

function Delivered({ id }: { id: string }) {
  const { board } = useApp();
  const text = useBoard((state) => {
    const solution = id === state.schemeId ? state.solution : board.solutionOf(id);
    const speed = solution.speeds[state.speed] ?? solution.speeds.at(-1);
    if (!speed) return '–';
    return speed.outcome.solved ? formatFlow(speed.outcome.flow, state.units) : '–';
  });
  return <span className="scheme-flow">{text}</span>;
}

const schemeCommands = [
  'scheme.compare',
  'scheme.parts',
  'scheme.prices',
  'scheme.new',
  'scheme.duplicate',
  'scheme.search',
  'check.fault',
  'scheme.rename',
  'scheme.delete',
].map(commandById);

function SchemeMenu() {
  const app = useApp();
  const single = useBoard((state) => state.job.schemes.length === 1);
  return (
    <MenuTrigger>
      <Button className="icon-button" aria-label={says.actions}>
        <Icon name="more" />
      </Button>
      <Popover className="popover" placement="bottom end">
        <Menu
          className="menu"
          aria-label={says.actions}
          disabledKeys={single ? ['scheme.delete', 'scheme.compare'] : []}
          onAction={(id) => commandById(String(id)).run(app)}
        >
          {schemeCommands.map((command) => (
            <MenuItem key={command.id} id={command.id}>
              {command.title(app.board.getState())}
            </MenuItem>
          ))}
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}

function NameField({ id, name }: { id: string; name: string }) {
  const { board, ui } = useApp();
  const [text, setText] = useState(name);
  const close = (take: boolean) => {
    ui.setState({ renaming: null });
    const next = text.trim();
    if (!take || next === '' || next === name) return;
    board.dispatch(words.edits.scheme.rename, (job) => {
      const scheme = job.schemes.find((s) => s.id === id);
      if (scheme) scheme.name = next;
    });
  };
  return (
    <TextField
      className="scheme-rename"
      aria-label={says.name}
      autoFocus
      value={text}
      onChange={setText}
      onBlur={() => close(true)}
      onKeyDown={(event) => {
        if (event.key === 'Enter') close(true);
        if (event.key === 'Escape') close(false);
      }}
    >
      <Input maxLength={200} onFocus={(event) => event.target.select()} />
    </TextField>
  );
}
