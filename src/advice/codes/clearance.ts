import { sentence } from '../../graph/places.ts';
import { drawnAround } from '../../graph/surroundings.ts';
import { formatLength } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { type Check, type Checked, type Said, worst } from './types.ts';

const says = words.clearances;

/** A cap this far above an air intake may stand as near as it likes, m: 3 ft, IRC M1506.3. */
const ABOVE_INTAKE = 0.9144;

/** One thing near a cap, and where its distance is from. */
interface Near {
  readonly thing: string;
  readonly how: string;
  readonly distance: number;
  /** How far the cap stands above it, m. */
  readonly above: number;
}

/**
 * The distance from each cap to one kind of thing around it: as entered from the site, else to each of them that
 * is drawn.
 */
export const clearance: Check = (checked, rule, limit) => {
  const { job, scheme, places, runs } = checked;
  const what = rule.clearance ?? 'opening';
  const least = typeof limit === 'number' ? limit : 0;
  const ends = new Set(runs.map((run) => run.legs.at(-1)?.to));
  const caps = scheme.nodes.filter((node) => node.role === 'cap' && ends.has(node.id));
  const length = (metres: number) => formatLength(metres, job.units);
  const said = caps.flatMap(({ id }): Said[] => {
    const near = nearOf(checked, id, what);
    const nodes = [id];
    const cap = sentence(places.node(id));
    if (near.length === 0) {
      const message = says.said.unknown(places.node(id), says.things[what]);
      return [{ state: 'cannot tell', message, remedy: says.said.measure, nodes }];
    }
    return near.map(({ thing, how, distance, above }): Said => {
      const measured = length(distance);
      const tooNear = distance < least * (1 - 1e-9);
      if (tooNear && what === 'intake' && above >= ABOVE_INTAKE * (1 - 1e-9)) {
        const message = says.said.above(cap, measured, thing, how, length(above));
        return { state: 'meets', message, measured, nodes };
      }
      return {
        state: tooNear ? 'fails' : 'meets',
        message: says.said.stands(cap, measured, thing, how, length(least)),
        measured,
        nodes,
      };
    });
  });
  return worst(said, says.noCap);
};

/** What was measured on site takes the place of what is drawn. */
function nearOf({ job, scheme, solution }: Checked, cap: string, what: keyof typeof says.things): Near[] {
  const typed = scheme.nodes.find(({ id }) => id === cap)?.clearances;
  const distance = typed?.[what];
  if (distance !== undefined)
    return [{ thing: says.things[what], how: says.said.typed, distance, above: typed?.aboveIntake ?? 0 }];
  return drawnAround(job, solution.route, cap, what).map(({ block, distance, above }) => ({
    thing: block.name.trim() || says.drawnThings[what],
    how: says.said.drawn,
    distance,
    above: typed?.aboveIntake ?? above,
  }));
}
