import { findLimit, need } from '../../hydraulics/catalogue.ts';
import { formatArea, formatFlow, formatPressure } from '../../units/index.ts';
import type { Job } from '../document.ts';
import { applianceLimit } from '../house.ts';
import { sentence } from '../places.ts';
import type { Finding } from '../route.ts';
import { ruleLimit, ruleOn } from '../rules.ts';
import type { HouseLimit, SpeedResult } from '../solution.ts';
import { finding } from './drawing.ts';
import type { SolvedScheme } from './solved.ts';

/** What the fans do to the house, and what the code asks for. */
export function houseFindings(scheme: SolvedScheme): Finding[] {
  return [...depressurization(scheme), ...unknownAppliances(scheme), ...makeUpTrigger(scheme)];
}

/** The house below what its most delicate appliance can stand. */
function depressurization({ ran, units }: SolvedScheme): Finding[] {
  const beyond = ran.flatMap(({ speeds }) =>
    speeds.flatMap((speed) => {
      const house = speed.outcome.solved ? speed.outcome.house : null;
      const { limit, makeUpNeeded } = house ?? {};
      return house && limit && makeUpNeeded ? [{ speed, house, limit, makeUpNeeded }] : [];
    }),
  );
  const worst = beyond.reduce<(typeof beyond)[number] | undefined>(
    (most, one) => (one.house.pressure < (most?.house.pressure ?? 0) ? one : most),
    undefined,
  );
  if (!worst) return [];
  const { house, limit, makeUpNeeded } = worst;
  const nodes = [...new Set(ran.map(({ node }) => node))];
  const others = house.otherExhaust > 0 ? ` with the other fans of the house running` : '';
  const pressure = `At ${namesOf(beyond.map(({ speed }) => speed))} the house falls as far as ${pascals(-house.pressure, units)} below outdoors${others}`;
  const makeUp = `Bring in ${formatFlow(makeUpNeeded.flow, units)} of make-up air in all (a plain opening of ${formatArea(makeUpNeeded.opening, units)} free area)`;
  return [limit.canSpill ? spills() : strains()];

  function spills(): Finding {
    return finding(
      'house-depressurization',
      'danger',
      { nodes },
      `${pressure}; the limit for ${applianceWords(limit)} is ${pascals(limit.value, units)}. Flue gas with carbon monoxide can be drawn back into the rooms.`,
      {
        remedy: `${makeUp}, and have a licensed technician test every flue for spillage with all fans running.`,
        source: limit.source,
      },
    );
  }
  function strains(): Finding {
    return finding(
      'house-depressurization',
      'warning',
      { nodes },
      `${pressure}; ${pascals(limit.value, units)} is the most for a house without an appliance that can spill carbon monoxide.`,
      { remedy: `${makeUp}; if there is any fuel-burning appliance, enter it.`, source: limit.source },
    );
  }
}

/** "a natural-draught water heater alone on its flue" */
function applianceWords({ appliance }: HouseLimit): string {
  const words = appliance.charAt(0).toLowerCase() + appliance.slice(1);
  return `${/^[aeiou]/.test(words) ? 'an' : 'a'} ${words}`;
}

/** House pressures are spoken of in pascals everywhere; inches of water stand beside where they are used. */
function pascals(pressure: number, units: Job['units']): string {
  const si = formatPressure(pressure, 'metric');
  return units === 'metric' ? si : `${si} (${formatPressure(pressure, units)})`;
}

function namesOf(speeds: readonly SpeedResult[]): string {
  const names = [...new Set(speeds.map(({ name }) => name))];
  return names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}

function unknownAppliances({ scene }: SolvedScheme): Finding[] {
  const { house } = scene.job;
  return (house?.combustion ?? [])
    .filter((name) => !applianceLimit(name))
    .map((name) =>
      finding(
        'unknown-appliance',
        'warning',
        {},
        `The catalogue has no depressurization limit for "${name}", so the house is not held against one for it; if it burns fuel, its flue may spill carbon monoxide.`,
        { remedy: 'Choose the appliance from the list, and have a licensed technician test for spillage.' },
      ),
    )
    .map((found, i) => ({ ...found, id: `${found.rule}:${i}` }));
}

/** A hood that the model residential code wants make-up air for. */
function makeUpTrigger({ scene, ran, units, profile }: SolvedScheme): Finding[] {
  const row = need(findLimit('make-up-trigger'), 'limits', 'make-up-trigger');
  const trigger = ruleLimit(profile, 'make-up-air')?.value;
  if (typeof trigger !== 'number' || !ruleOn(profile, 'make-up-air')) return [];
  return ran.flatMap(({ node, hood, speeds }) => {
    const rated = Math.max(...speeds.map((speed) => speed.ratedFlow));
    const moved = Math.max(...speeds.map(({ outcome }) => (outcome.solved ? outcome.flow : 0)));
    if (Math.max(rated, moved) <= trigger) return [];
    const supplied = scene.job.house?.makeUpAir;
    const what = `${hood.name} is rated for ${formatFlow(rated, units)} and moves ${formatFlow(moved, units)} here; above ${formatFlow(trigger, units)} the model residential code wants make-up air at about the rate of the exhaust, opening when the hood runs.`;
    return [
      finding('make-up-air', supplied ? 'note' : 'warning', { nodes: [node] }, what, {
        remedy: supplied
          ? 'Check that the make-up air entered comes on with the hood and is near its rate. The adopted code decides.'
          : `Provide make-up air of about ${formatFlow(moved, units)}. ${sentence(row.notes?.[0] ?? 'The adopted code decides.')}`,
        source: row.source,
      }),
    ];
  });
}
