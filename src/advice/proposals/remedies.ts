import type { Job } from '../../graph/document.ts';
import { setInsulation } from '../../graph/edits/index.ts';
import type { SchemeSolution, Solved } from '../../graph/solution.ts';
import { dewPoint } from '../../hydraulics/heat.ts';
import {
  FOOT,
  formatArea,
  formatDiameter,
  formatFlow,
  formatPressure,
  formatTemperature,
} from '../../units/index.ts';
import { words } from '../../words/index.ts';
import type { Candidate, Kind } from './candidate.ts';

const says = words.proposals.remedies;

/** Wrap is sold by the inch, or by 25 mm. */
const wrapOf = (units: Job['units']) => (units === 'imperial' ? FOOT / 12 : 0.025);
/** Thicker wrap than this is not proposed, m. */
const thickestWrap = 0.105;

/** Wrap for the legs whose inside falls below the dew point of the kitchen air at any speed, where wrap is enough. */
export const insulated: Kind = ({ scheme, solution, route, places, units, job }) => {
  const risks = solvedOf(solution).flatMap((solved) =>
    [...solved.segments.values()].filter(({ condensation }) => condensation.risk),
  );
  const needs = risks.map(({ condensation }) => condensation.insulation);
  if (risks.length === 0 || needs.includes(null)) return [];
  const wrap = wrapOf(units);
  const thickness = wrap * Math.ceil(Math.max(...needs.map((need) => need ?? 0)) / wrap - 1e-6);
  const segments = route.order.filter((id) => risks.some((risk) => risk.id === id));
  if (thickness > thickestWrap) return [];
  const coldest = risks.reduce((cold, leg) => (leg.wallTemperature < cold.wallTemperature ? leg : cold));
  const { temperature, humidity } = job.air;
  const words = formatDiameter(thickness, units);
  const legs = segments.length === 1 ? places.leg(coldest.id) : says.coldLegs(segments.length);
  return [
    {
      id: `insulation:${segments.join('+')}`,
      kind: 'insulation',
      remedy: true,
      title: says.wrapTitle(legs, words),
      label: says.wrapLabel(legs),
      recipe: (draft) => setInsulation(draft, scheme.id, segments, thickness),
      nodes: [],
      segments,
      reason: () =>
        says.wrapReason(
          places.leg(coldest.id),
          formatTemperature(coldest.wallTemperature, units),
          formatTemperature(dewPoint(temperature, humidity), units),
          words,
        ),
    } satisfies Candidate,
  ];
};

/** Make-up air that brings the house back to its limit at every speed; it is a part of the job, so every scheme has it. */
export const makeUpAir: Kind = ({ job, solution, units }) => {
  const short = solvedOf(solution).flatMap(({ house }) =>
    house?.makeUpNeeded && house.limit ? [{ ...house, needed: house.makeUpNeeded, limit: house.limit }] : [],
  );
  const [first] = short;
  if (!job.house || !first) return [];
  const worst = short.reduce((most, one) => (one.needed.flow > most.needed.flow ? one : most), first);
  const area = Math.ceil(worst.needed.opening * 1000) / 1000;
  const flow = Math.ceil(worst.needed.flow * 1000) / 1000;
  const fan = job.house.makeUpAir?.kind === 'fan';
  const words = fan ? says.fan(formatFlow(flow, units)) : says.opening(formatArea(area, units));
  return [
    {
      id: 'make-up-air',
      kind: 'make-up air',
      remedy: true,
      title: says.makeUpTitle(words),
      label: says.makeUpLabel,
      recipe: (draft) => {
        if (!draft.house) return;
        const opening = draft.house.makeUpAir?.kind === 'opening' ? draft.house.makeUpAir : {};
        draft.house.makeUpAir = fan ? { kind: 'fan', flow } : { ...opening, kind: 'opening', area };
      },
      nodes: [],
      segments: [],
      reason: () =>
        says.makeUpReason(
          formatPressure(-worst.pressure, 'metric'),
          formatPressure(worst.limit.value, 'metric'),
          words,
          formatFlow(worst.needed.flow, units),
        ),
    } satisfies Candidate,
  ];
};

function solvedOf({ speeds }: SchemeSolution): Solved[] {
  return speeds.flatMap(({ outcome }) => (outcome.solved && outcome.flow > 0 ? [outcome] : []));
}
