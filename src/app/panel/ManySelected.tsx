import { Button, Keyboard } from 'react-aria-components';
import type { Selection } from '../../canvas/board.ts';
import { setDuct, setMaterial } from '../../graph/edits/index.ts';
import { materials } from '../../hydraulics/catalogue.ts';
import { commandById } from '../commands.ts';
import { useApp, useBoard } from '../context.ts';
import { onMac } from '../controls.tsx';
import { printed } from '../shortcut.ts';
import { counted } from '../wording.ts';
import { RowChooser, SectionChooser } from './choosers.tsx';

const offered = [
  'edit.duplicate',
  'edit.mirrorX',
  'edit.mirrorY',
  'edit.rotate',
  'edit.alignWest',
  'edit.alignSouth',
  'edit.alignHigh',
  'edit.delete',
].map(commandById);

/** Several things at once: what they are, one size and material for all ducts, and what can be done to them. */
export function ManySelected({ selection }: { selection: Selection }) {
  const app = useApp();
  const state = useBoard((now) => now);
  const parts = [
    [selection.segments.length, 'duct'],
    [selection.nodes.length, 'point'],
    [selection.parts?.length ?? 0, 'part in line'],
    [selection.blocks?.length ?? 0, 'block'],
    [selection.exits?.length ?? 0, 'outside face'],
    [selection.notes?.length ?? 0, 'note'],
    [selection.dimensions?.length ?? 0, 'dimension'],
  ] as const;
  const words = parts
    .filter(([count]) => count > 0)
    .map(([count, noun]) =>
      noun === 'part in line' && count > 1 ? `${count} parts in line` : counted(count, noun),
    );
  return (
    <section className="details" aria-label="Selected things">
      <h2>{words.join(', ').replace(/, ([^,]*)$/, ' and $1')} selected</h2>
      {selection.segments.length > 0 && <OneChoice segments={selection.segments} />}
      <ul className="actions">
        {offered
          .filter((command) => command.enabled(state))
          .map((command) => (
            <li key={command.id}>
              <Button className="button" onPress={() => command.run(app)}>
                {command.title(state)}
                {command.shortcuts[0] && <Keyboard>{printed(command.shortcuts[0], onMac)}</Keyboard>}
              </Button>
            </li>
          ))}
      </ul>
      <p className="hint">Drag to move them together, or press the arrow keys.</p>
    </section>
  );
}

function OneChoice({ segments }: { segments: readonly string[] }) {
  const { board } = useApp();
  const schemeId = useBoard((state) => state.schemeId);
  const route = useBoard((state) => state.solution.route);
  const legs = segments.flatMap((id) => route.segments.get(id) ?? []);
  const [first] = legs;
  if (!first) return null;
  const alike = legs.every((leg) => leg.material === first.material);
  return (
    <>
      <SectionChooser
        label={segments.length > 1 ? 'Size of all' : 'Size'}
        value={first.section}
        onChoose={(section) =>
          board.dispatch('change duct size', (job) => setDuct(job, schemeId, segments, section))
        }
      />
      <RowChooser
        label={segments.length > 1 ? 'Material of all' : 'Material'}
        rows={materials}
        value={alike ? first.material : ''}
        onChoose={(chosen) =>
          board.dispatch('change material', (job) => setMaterial(job, schemeId, segments, chosen))
        }
      />
    </>
  );
}
