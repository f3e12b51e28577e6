import { dewPoint } from '../../hydraulics/heat.ts';
import { formatDiameter, formatTemperature, formatVelocity } from '../../units/index.ts';
import { type Places, sentence } from '../places.ts';
import type { Finding } from '../route.ts';
import { ruleLimit, ruleOf, ruleOn } from '../rules.ts';
import type { Solved } from '../solution.ts';
import { finding } from './drawing.ts';
import type { Ran, SolvedScheme } from './solved.ts';

/** What the air in the duct does: too fast, too slow, or too cold. */
export function airFindings(scheme: SolvedScheme, places: Places): Finding[] {
  return scheme.ran.flatMap((ran) => [
    ...velocities(ran, scheme, places),
    ...condensation(ran, scheme, places),
  ]);
}

/** The speeds of a hood that were solved with air going out, lowest first. */
function solvedOf({ speeds }: Ran): { readonly name: string; readonly solved: Solved }[] {
  return speeds.flatMap(({ name, outcome }) =>
    outcome.solved && outcome.flow > 0 ? [{ name, solved: outcome }] : [],
  );
}

/** Velocity on the hood's own run at its highest speed against the advisory band. */
function velocities(ran: Ran, { units, profile }: SolvedScheme, places: Places): Finding[] {
  const top = solvedOf(ran).at(-1);
  const row = ruleOf('velocity');
  const limit = ruleLimit(profile, 'velocity')?.value;
  if (!top || limit === undefined || typeof limit === 'number' || !ruleOn(profile, 'velocity')) return [];
  const [least, most] = limit;
  const run = top.solved.path.flatMap((id) => top.solved.segments.get(id) ?? []);
  const band = `${formatVelocity(least, units)} to ${formatVelocity(most, units)}`;
  const say = (rule: string, legs: typeof run, words: string, remedy: string): Finding[] => {
    const [first] = legs;
    if (!first) return [];
    const extreme = legs.reduce(
      (far, leg) => (Math.abs(leg.velocity - least) > Math.abs(far.velocity - least) ? leg : far),
      first,
    );
    return [
      {
        ...finding(
          rule,
          'note',
          { nodes: [ran.node], segments: legs.map(({ id }) => id) },
          `${sentence(places.leg(extreme.id))} has ${formatVelocity(extreme.velocity, units)} at ${top.name}, ${words} the advisory ${band}.`,
          { remedy, source: row.source },
        ),
        id: `${rule}:${ran.node}`,
      },
    ];
  };
  return [
    ...say(
      'velocity-high',
      run.filter(({ velocity }) => velocity > most),
      'above',
      'A larger duct is quieter and lets more air out.',
    ),
    ...say(
      'velocity-low',
      run.filter(({ velocity }) => velocity < least),
      'below',
      'Slow air lets grease settle: keep the duct short, sloped to where it can be cleaned, and reachable.',
    ),
  ];
}

/** Inside walls below the dew point of the kitchen air, at the speed where they are coldest. */
function condensation(ran: Ran, { scene, units }: SolvedScheme, places: Places): Finding[] {
  const coldest = solvedOf(ran)
    .map(({ name, solved }) => ({ name, legs: solved.path.flatMap((id) => solved.segments.get(id) ?? []) }))
    .map(({ name, legs }) => ({ name, legs: legs.filter((leg) => leg.condensation.risk) }))
    .reduce<
      | { name: string; legs: Solved['segments'] extends ReadonlyMap<string, infer S> ? S[] : never }
      | undefined
    >(
      (worst, one) =>
        one.legs.length > 0 && wallOf(one.legs) < (worst ? wallOf(worst.legs) : 1e9) ? one : worst,
      undefined,
    );
  const { temperature, humidity, outdoorTemperature } = scene.job.air;
  const first = coldest?.legs.reduce((cold, leg) =>
    leg.wallTemperature < cold.wallTemperature ? leg : cold,
  );
  if (!coldest || !first) return [];
  const needed = coldest.legs.map((leg) => leg.condensation.insulation);
  const thickest = needed.includes(null) ? null : Math.max(...needed.map((t) => t ?? 0));
  return [
    {
      ...finding(
        'condensation',
        'warning',
        { nodes: [ran.node], segments: coldest.legs.map(({ id }) => id) },
        `With ${formatTemperature(outdoorTemperature, units)} outdoors the inside of ${places.leg(first.id)} falls to ${formatTemperature(first.wallTemperature, units)} at ${coldest.name}, below the dew point of the kitchen air (${formatTemperature(dewPoint(temperature, humidity), units)}): water and grease run back down the duct.`,
        {
          remedy:
            thickest === null
              ? 'Insulation alone does not prevent it: keep the duct inside the heated space.'
              : `Wrap the cold legs with ${formatDiameter(thickest, units)} of insulation or more, and slope the duct to the outside.`,
          source:
            'Magnus dew point and heat transfer through the wall, from memory; films and wrap are common practice',
        },
      ),
      id: `condensation:${ran.node}`,
    },
  ];
}

function wallOf(legs: readonly { readonly wallTemperature: number }[]): number {
  return Math.min(...legs.map((leg) => leg.wallTemperature));
}
