import { Button, Keyboard } from 'react-aria-components';
import type { Selection } from '../../canvas/board.ts';
import { setDuct, setMaterial } from '../../graph/edits/index.ts';
import { materials } from '../../hydraulics/catalogue.ts';
import { words } from '../../words/index.ts';
import { commandById } from '../commands.ts';
import { useApp, useBoard } from '../context.ts';
import { onMac } from '../controls.tsx';
import { printed } from '../shortcut.ts';
import { RowChooser, SectionChooser } from './choosers.tsx';

const says = words.panels.many;

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
  const { counts } = words;
  const parts: readonly (readonly [number, (n: number) => string])[] = [
    [selection.segments.length, counts.ducts],
    [selection.nodes.length, counts.points],
    [selection.parts?.length ?? 0, counts.partsInLine],
    [selection.blocks?.length ?? 0, counts.blocks],
    [selection.exits?.length ?? 0, counts.outsideFaces],
    [selection.notes?.length ?? 0, counts.notes],
    [selection.dimensions?.length ?? 0, counts.dimensions],
  ];
  const things = parts.filter(([n]) => n > 0).map(([n, counted]) => counted(n));
  return (
    <section className="details" aria-label={says.label}>
      <h2>{says.selected(words.phrases.list.and(things))}</h2>
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
      <p className="hint">{says.hint}</p>
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
        label={segments.length > 1 ? says.sizeOfAll : says.size}
        value={first.section}
        onChoose={(section) =>
          board.dispatch(words.edits.route.ductSize, (job) => setDuct(job, schemeId, segments, section))
        }
      />
      <RowChooser
        label={segments.length > 1 ? says.materialOfAll : says.material}
        rows={materials}
        value={alike ? first.material : ''}
        onChoose={(chosen) =>
          board.dispatch(words.edits.route.material, (job) => setMaterial(job, schemeId, segments, chosen))
        }
      />
    </>
  );
}
