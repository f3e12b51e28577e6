import { findCap } from '../../hydraulics/catalogue.ts';
import { type Check, type Checked, type Run, type Said, worst } from './types.ts';

/** A part in line, or a cap with a flap, that falls shut when the fan rests. */
export const damper: Check = (checked) =>
  worst(
    withLegs(checked).map((run): Said => {
      const found = run.legs.find((leg) => partsOf(checked, leg.id).includes('backdraught-damper'));
      const end = checked.scheme.nodes.find((node) => node.id === run.legs.at(-1)?.to);
      if (found)
        return {
          state: 'meets',
          message: `A backdraught damper stands in ${checked.places.leg(found.id)}.`,
          segments: [found.id],
        };
      if (findCap(end?.cap ?? '')?.flap && end)
        return { state: 'meets', message: 'The flap of the cap keeps cold air out.', nodes: [end.id] };
      return {
        state: 'fails',
        message: `Nothing keeps cold air from coming back to ${run.hood.name}: the run has no backdraught damper, and its cap no flap.`,
        nodes: end ? [end.id] : [],
        segments: run.legs.map((leg) => leg.id),
      };
    }),
    'No run leads from a hood to an exit yet.',
  );

/** Parts in line that the air is strained through. */
const strainers = ['screen', 'perforated-plate'];

/** Screens in the run; those of caps have findings of their own. */
export const screen: Check = (checked, rule) => {
  const inRun = withLegs(checked)
    .flatMap((run) => run.legs)
    .filter((leg) => partsOf(checked, leg.id).some((kind) => strainers.includes(kind)));
  const found = checked.solution.findings.find(({ rule: id }) => rule.findings?.includes(id));
  if (inRun.length > 0)
    return {
      state: 'fails',
      message: `A screen stands in ${checked.places.leg(inRun[0]?.id ?? '')}, where grease and lint close it.`,
      segments: inRun.map((leg) => leg.id),
    };
  if (found) return { state: 'fails', message: found.message, nodes: found.nodes, segments: found.segments };
  if (withLegs(checked).length === 0)
    return { state: 'not applicable', message: 'No run leads from a hood to an exit yet.' };
  return { state: 'meets', message: 'No screen stands in the run or at its end.' };
};

/** Two hoods on one way out. A dryer or a bath fan joined on site is not seen. */
export const ownDuct: Check = ({ runs }) => {
  const used = new Map<string, string[]>();
  for (const run of runs)
    for (const leg of run.legs) used.set(leg.id, [...(used.get(leg.id) ?? []), run.hood.name]);
  const shared = [...used].filter(([, hoods]) => hoods.length > 1);
  if (used.size === 0)
    return { state: 'not applicable', message: 'No run leads from a hood to an exit yet.' };
  if (shared.length > 0)
    return {
      state: 'fails',
      message: `${shared[0]?.[1].join(' and ')} share a duct.`,
      segments: shared.map(([id]) => id),
    };
  return {
    state: 'meets',
    message:
      'As drawn, each hood has its own duct; a dryer or a bath fan joined to it on site is not seen here.',
  };
};

const withLegs = ({ runs }: Checked): Run[] => runs.filter((run) => run.legs.length > 0);

function partsOf({ scheme }: Checked, segment: string): string[] {
  return (scheme.segments.find((each) => each.id === segment)?.fittings ?? []).map(({ kind }) => kind);
}
