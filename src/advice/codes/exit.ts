import { findCap } from '../../hydraulics/catalogue.ts';
import { words } from '../../words/index.ts';
import { type Check, type Checked, type Run, type Said, worst } from './types.ts';

const says = words.rules.exit;

/** A part in line, or a cap with a flap, that falls shut when the fan rests. */
export const damper: Check = (checked) =>
  worst(
    withLegs(checked).map((run): Said => {
      const found = run.legs.find((leg) => partsOf(checked, leg.id).includes('backdraught-damper'));
      const end = checked.scheme.nodes.find((node) => node.id === run.legs.at(-1)?.to);
      if (found)
        return {
          state: 'meets',
          message: says.damperIn(checked.places.leg(found.id)),
          segments: [found.id],
        };
      if (findCap(end?.cap ?? '')?.flap && end)
        return { state: 'meets', message: says.flapHolds, nodes: [end.id] };
      return {
        state: 'fails',
        message: says.nothingHolds(run.hood.name),
        nodes: end ? [end.id] : [],
        segments: run.legs.map((leg) => leg.id),
      };
    }),
    says.noRun,
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
      message: says.screenIn(checked.places.leg(inRun[0]?.id ?? '')),
      segments: inRun.map((leg) => leg.id),
    };
  if (found) return { state: 'fails', message: found.message, nodes: found.nodes, segments: found.segments };
  if (withLegs(checked).length === 0) return { state: 'not applicable', message: says.noRun };
  return { state: 'meets', message: says.noScreen };
};

/** Two hoods on one way out. A dryer or a bath fan joined on site is not seen. */
export const ownDuct: Check = ({ runs }) => {
  const used = new Map<string, string[]>();
  for (const run of runs)
    for (const leg of run.legs) used.set(leg.id, [...(used.get(leg.id) ?? []), run.hood.name]);
  const shared = [...used].filter(([, hoods]) => hoods.length > 1);
  if (used.size === 0) return { state: 'not applicable', message: says.noRun };
  if (shared.length > 0)
    return {
      state: 'fails',
      message: says.share((shared[0]?.[1] ?? []).join(says.and)),
      segments: shared.map(([id]) => id),
    };
  return {
    state: 'meets',
    message: says.ownDuct,
  };
};

const withLegs = ({ runs }: Checked): Run[] => runs.filter((run) => run.legs.length > 0);

function partsOf({ scheme }: Checked, segment: string): string[] {
  return (scheme.segments.find((each) => each.id === segment)?.fittings ?? []).map(({ kind }) => kind);
}
