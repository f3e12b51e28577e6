import { Keyboard } from 'react-aria-components';
import { type KeyScope, shortcuts as toolKeys } from '../canvas/tools/keys.ts';
import { words } from '../words/index.ts';
import { commands } from './commands.ts';
import { useBoard } from './context.ts';
import { onMac } from './controls.tsx';
import { printed } from './shortcut.ts';

const says = words.shell.shortcuts;

/** Every key that does something, in columns as wide as there is room for. */
export function ShortcutGroups() {
  return (
    <div className="shortcut-columns">
      <Commands />
      {scopes.map(({ scope, title }) => (
        <ToolKeys key={scope} scope={scope} title={title} />
      ))}
    </div>
  );
}

function Commands() {
  const state = useBoard((now) => now);
  const rows = commands.filter((command) => command.shortcuts.length > 0);
  return (
    <Group
      title={says.commands}
      rows={rows.map((command) => ({ title: command.title(state), keys: command.shortcuts }))}
    />
  );
}

const scopes: readonly { readonly scope: KeyScope; readonly title: string }[] = [
  { scope: 'sheets', title: says.onSheets },
  { scope: 'select', title: says.onSelection },
  { scope: 'draw', title: says.whileDrawing },
];

function ToolKeys({ scope, title }: { scope: KeyScope; title: string }) {
  const listed = new Set(commands.flatMap((command) => command.shortcuts));
  const rows = toolKeys.filter((row) => row.scope === scope && !row.keys.some((key) => listed.has(key)));
  return <Group title={title} rows={rows} />;
}

interface GroupProps {
  readonly title: string;
  readonly rows: readonly { readonly title: string; readonly keys: readonly string[] }[];
}

function Group({ title, rows }: GroupProps) {
  if (rows.length === 0) return null;
  return (
    <div>
      <h3>{title}</h3>
      <dl>
        {rows.map((row) => (
          <div key={row.title}>
            <dt>{row.title}</dt>
            <dd>
              {row.keys.map((key) => (
                <Keyboard key={key}>{printed(key, onMac)}</Keyboard>
              ))}
            </dd>
          </div>
        ))}
      </dl>
    </div>
  );
}
