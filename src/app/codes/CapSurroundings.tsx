import { Group } from 'react-aria-components';
import { setCapClearance } from '../../graph/edits/index.ts';
import { schemeOf } from '../../graph/infer.ts';
import { placesOf, sentence } from '../../graph/places.ts';
import { drawnAround } from '../../graph/surroundings.ts';
import { formatLength, parseLength } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useApp, useBoard } from '../context.ts';
import { QuantityField } from '../controls.tsx';
import { within } from '../kitchen/reading.ts';

const says = words.codes.surroundings;
const { drawnThings, field } = words.clearances;

const fields = [
  { what: 'propertyLine', label: says.propertyLine },
  { what: 'opening', label: says.opening },
  { what: 'intake', label: says.intake },
  { what: 'aboveIntake', label: says.aboveIntake },
] as const;

/** Farther than this is as good as nothing near, m. */
const FAR = 100;

/** Distances from each cap, as measured on site. */
export function CapSurroundings() {
  const { board } = useApp();
  const job = useBoard((state) => state.job);
  const schemeId = useBoard((state) => state.schemeId);
  const route = useBoard((state) => state.solution.route);
  const units = useBoard((state) => state.units);
  const caps = schemeOf(job, schemeId).nodes.filter((node) => node.role === 'cap');
  if (caps.length === 0) return null;
  const places = placesOf(route);
  const set = (cap: string, what: (typeof fields)[number]['what'], metres: number | null) =>
    board.dispatch(
      metres === null ? words.edits.codes.takeOutDistance : words.edits.codes.enterDistance,
      (draft) => setCapClearance(draft, schemeId, cap, what, metres),
    );
  const show = (metres: number) => formatLength(metres, units);
  const drawnWords = (what: (typeof fields)[number]['what'], cap: string, typed: boolean) => {
    const [near] = drawnAround(job, route, cap, what === 'aboveIntake' ? 'intake' : what);
    if (!near) return {};
    const distance = show(what === 'aboveIntake' ? near.above : near.distance);
    const thing = near.block.name.trim() || drawnThings[what === 'aboveIntake' ? 'intake' : what];
    return { description: typed ? field.overrules(distance) : field.drawn(distance, thing) };
  };
  return (
    <>
      {caps.map((cap) => {
        const title = says.around(places.node(cap.id));
        return (
          <Group key={cap.id} className="cap-around" aria-label={title}>
            <h3 className="code-group">{sentence(title)}</h3>
            <div className="field-grid">
              {fields.map(({ what, label }) => {
                const value = cap.clearances?.[what];
                return (
                  <QuantityField
                    key={what}
                    label={label}
                    value={value === undefined ? '' : show(value)}
                    {...drawnWords(what, cap.id, value !== undefined)}
                    parse={(text) =>
                      within(parseLength(text, units), what === 'aboveIntake' ? -FAR : 0, FAR, label, show)
                    }
                    onCommit={(metres) => set(cap.id, what, metres)}
                    onClear={() => set(cap.id, what, null)}
                  />
                );
              })}
            </div>
          </Group>
        );
      })}
    </>
  );
}
