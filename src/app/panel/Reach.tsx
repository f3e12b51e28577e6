import { ToggleButton, ToggleButtonGroup } from 'react-aria-components';
import { type Reach, stretchFrom } from '../../graph/stretch.ts';
import { words } from '../../words/index.ts';
import { useApp, useBoard, useUi } from '../context.ts';

const says = words.panels.reach;

const names = [
  { id: 'leg', name: says.leg },
  { id: 'fitting', name: says.toNextFitting },
  { id: 'run', name: says.wholeRun },
] as const satisfies readonly { id: Reach | 'leg'; name: string }[];

/** How far a choice of size or material goes from the duct that is selected. */
export function ReachSwitch({ id }: { id: string }) {
  const { ui } = useApp();
  const reach = useUi((state) => state.reach);
  const count = useReached(id).length;
  return (
    <div className="reach">
      <span id="reach-label" className="field-label">
        {says.label}
      </span>
      <ToggleButtonGroup
        className="switch"
        aria-labelledby="reach-label"
        selectionMode="single"
        disallowEmptySelection
        selectedKeys={[reach]}
        onSelectionChange={([key]) => {
          if (key !== undefined) ui.setState({ reach: key as Reach | 'leg' });
        }}
      >
        {names.map((row) => (
          <ToggleButton key={row.id} id={row.id}>
            {row.name}
          </ToggleButton>
        ))}
      </ToggleButtonGroup>
      {reach !== 'leg' && <span className="field-note">{says.choice(words.counts.ducts(count))}</span>}
    </div>
  );
}

/** The ducts that a choice made at one of them goes to. */
export function useReached(id: string): readonly string[] {
  const reach = useUi((state) => state.reach);
  const route = useBoard((state) => state.solution.route);
  return reach === 'leg' ? [id] : stretchFrom(route, id, reach);
}
