import { dewPoint } from '../../hydraulics/heat.ts';
import { formatDiameter, formatTemperature, formatVelocity } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { type Places, sentence } from '../places.ts';
import type { Finding } from '../route.ts';
import { ruleLimit, ruleOf, ruleOn } from '../rules.ts';
import type { Condensing, Solved } from '../solution.ts';
import { finding } from './drawing.ts';
import type { Ran, SolvedScheme } from './solved.ts';

const says = words.findings.air;

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
  const band = says.band(formatVelocity(least, units), formatVelocity(most, units));
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
          says.outside(
            sentence(places.leg(extreme.id)),
            formatVelocity(extreme.velocity, units),
            top.name,
            words,
            band,
          ),
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
      says.above,
      says.larger,
    ),
    ...say(
      'velocity-low',
      run.filter(({ velocity }) => velocity < least),
      says.below,
      says.slow,
    ),
  ];
}

/** Inside walls below the dew point of the kitchen air, at the speed where they are coldest. */
function condensation(ran: Ran, { scene, units }: SolvedScheme, places: Places): Finding[] {
  let coldest:
    | { readonly name: string; readonly legs: readonly Condensing[]; readonly first: Condensing }
    | undefined;
  for (const { name, solved } of solvedOf(ran)) {
    const legs = solved.condensing;
    const [one, ...others] = legs;
    if (!one) continue;
    const first = others.reduce(
      (cold, leg) => (leg.wallTemperature < cold.wallTemperature ? leg : cold),
      one,
    );
    if (!coldest || first.wallTemperature < coldest.first.wallTemperature) coldest = { name, legs, first };
  }
  if (!coldest) return [];
  const { temperature, humidity, outdoorTemperature } = scene.job.air;
  const { first } = coldest;
  const needed = coldest.legs.map((leg) => leg.insulation);
  const thickest = needed.includes(null) ? null : Math.max(...needed.map((t) => t ?? 0));
  return [
    {
      ...finding(
        'condensation',
        'warning',
        { nodes: [ran.node], segments: coldest.legs.map(({ segment }) => segment) },
        says.condenses(
          formatTemperature(outdoorTemperature, units),
          places.leg(first.segment),
          formatTemperature(first.wallTemperature, units),
          coldest.name,
          formatTemperature(dewPoint(temperature, humidity), units),
        ),
        {
          remedy: thickest === null ? says.notByInsulation : says.insulate(formatDiameter(thickest, units)),
          source: says.condensationSource,
        },
      ),
      id: `condensation:${ran.node}`,
    },
  ];
}
