import { ToggleButton, ToggleButtonGroup } from 'react-aria-components';
import { words } from '../words/index.ts';
import { type Arrangement, arrange, arrangements } from './arrangement.ts';
import { useApp } from './context.ts';

/** Which views stand on the desk, as small pictures of it. */
export function ArrangementSwitch({
  shown,
  low,
}: {
  readonly shown: Arrangement;
  /** There is room for one row of sheets, which is two of them. */
  readonly low: boolean;
}) {
  const { ui } = useApp();
  return (
    <ToggleButtonGroup
      className="switch arrangement-switch"
      aria-label={words.shell.views.label}
      selectionMode="single"
      disallowEmptySelection
      selectedKeys={[shown]}
      onSelectionChange={([key]) => {
        const chosen = arrangements.find(({ id }) => id === key);
        if (chosen) arrange(ui, chosen.id);
      }}
    >
      {arrangements.map(({ id, title }) => (
        <ToggleButton key={id} id={id} aria-label={title} isDisabled={low && id !== shown}>
          <Picture of={id} />
        </ToggleButton>
      ))}
    </ToggleButtonGroup>
  );
}

const lines: Readonly<Record<Arrangement, string>> = {
  two: 'M9 1v10',
  three: 'M9 1v10M9 6h8',
  four: 'M9 1v10M1 6h16',
};

function Picture({ of }: { of: Arrangement }) {
  return (
    <svg width="18" height="12" viewBox="0 0 18 12" fill="none" stroke="currentColor" aria-hidden="true">
      <path d={`M1 1h16v10H1z${lines[of]}`} />
    </svg>
  );
}
