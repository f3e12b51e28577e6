import { findLimit, need } from '../../hydraulics/catalogue.ts';
import { formatArea, formatFlow, formatPressure } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import type { Job } from '../document.ts';
import { applianceLimit } from '../house.ts';
import { sentence } from '../places.ts';
import type { Finding } from '../route.ts';
import { ruleLimit, ruleOn } from '../rules.ts';
import type { HouseLimit, SpeedResult } from '../solution.ts';
import { finding } from './drawing.ts';
import type { SolvedScheme } from './solved.ts';

const says = words.findings.house;

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
  const others = house.otherExhaust > 0 ? says.withOthers : '';
  const pressure = says.falls(
    namesOf(beyond.map(({ speed }) => speed)),
    pascals(-house.pressure, units),
    others,
  );
  const makeUp = says.bringIn(formatFlow(makeUpNeeded.flow, units), formatArea(makeUpNeeded.opening, units));
  return [limit.canSpill ? spills() : strains()];

  function spills(): Finding {
    return finding(
      'house-depressurization',
      'danger',
      { nodes },
      says.spills(pressure, applianceWords(limit), pascals(limit.value, units)),
      {
        remedy: says.haveTested(makeUp),
        source: limit.source,
      },
    );
  }
  function strains(): Finding {
    return finding(
      'house-depressurization',
      'warning',
      { nodes },
      says.beyondTight(pressure, pascals(limit.value, units)),
      { remedy: says.enterAppliance(makeUp), source: limit.source },
    );
  }
}

/** "a natural-draught water heater alone on its flue" */
function applianceWords({ appliance }: HouseLimit): string {
  return says.appliance(appliance.charAt(0).toLowerCase() + appliance.slice(1));
}

/** House pressures are spoken of in pascals everywhere; inches of water stand beside where they are used. */
function pascals(pressure: number, units: Job['units']): string {
  const si = formatPressure(pressure, 'metric');
  return units === 'metric' ? si : says.both(si, formatPressure(pressure, units));
}

function namesOf(speeds: readonly SpeedResult[]): string {
  const names = [...new Set(speeds.map(({ name }) => name))];
  return names.length < 2 ? (names[0] ?? '') : says.and(names.slice(0, -1).join(', '), names.at(-1) ?? '');
}

function unknownAppliances({ scene }: SolvedScheme): Finding[] {
  const { house } = scene.job;
  return (house?.combustion ?? [])
    .filter((name) => !applianceLimit(name))
    .map((name) =>
      finding('unknown-appliance', 'warning', {}, says.noLimit(name), { remedy: says.chooseAppliance }),
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
    const what = says.trigger(
      hood.name,
      formatFlow(rated, units),
      formatFlow(moved, units),
      formatFlow(trigger, units),
    );
    return [
      finding('make-up-air', supplied ? 'note' : 'warning', { nodes: [node] }, what, {
        remedy: supplied
          ? says.checkMakeUp
          : says.provide(formatFlow(moved, units), sentence(row.notes?.[0] ?? says.codeDecides)),
        source: row.source,
      }),
    ];
  });
}
