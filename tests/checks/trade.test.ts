import { describe, expect, test } from 'vitest';
import { bendLoss } from '../../src/hydraulics/losses/bends.ts';
import { capLoss } from '../../src/hydraulics/losses/caps.ts';
import { roughnessOf } from '../../src/hydraulics/losses/materials.ts';
import { transitionLoss } from '../../src/hydraulics/losses/transitions.ts';
import { solveNetwork } from '../../src/hydraulics/network.ts';
import { area } from '../../src/hydraulics/section.ts';
import type { FanCurve, LossPart, Section } from '../../src/hydraulics/types.ts';
import { CFM, duct, FOOT, FPM, INCH, INCH_OF_WATER, roundInches, standardAir } from './published/model.ts';

/**
 * Facts of the trade, all common practice: each holds under conditions that are stated beside it, and the test
 * is a band. Source of every one: common practice.
 */

interface Run {
  readonly inches: number;
  readonly feet: number;
  /** r/D of each square three-piece bend. */
  readonly bends?: readonly number[];
  readonly cap?: string;
  /** Collar of the hood, in; a reducer follows where the duct is smaller. */
  readonly collar?: number;
  readonly fan: FanCurve;
}

/** A fan of the given free delivery (cfm) and shut-off pressure (in w.g.), with the curve of a blower. */
const blower = (freeCfm: number, shutOff: number): FanCurve => ({
  points: [0, 0.25, 0.5, 0.75, 1].map((x) => [x * freeCfm * CFM, (1 - x ** 2) * shutOff * INCH_OF_WATER]),
  basis: 'static',
  collarArea: area(roundInches(8)),
  density: 1.2,
});

/** A fan that keeps its pressure whatever the flow: what the duct alone decides. */
const steady = (pascal: number): FanCurve => ({
  points: [
    [0, pascal + 0.01],
    [5, pascal],
  ],
  basis: 'total',
  collarArea: 1,
  density: 1.2,
});

/** m3/s */
function delivered(run: Run): number {
  const section = roundInches(run.inches);
  const parts: LossPart[] = [duct(section, run.feet * FOOT, roughnessOf('galvanized', section).roughness)];
  for (const radiusRatio of run.bends ?? [])
    parts.push(...bendLoss({ kind: 'three-piece', angle: 90, radiusRatio, section }).parts);
  if (run.collar !== undefined)
    parts.push(
      ...transitionLoss({ from: roundInches(run.collar), to: section, kind: 'conical', angle: 40 }).parts,
    );
  parts.push(...capLoss({ cap: run.cap ?? 'wall-flap', section }).parts);
  const solution = solveNetwork({
    nodes: [
      { id: 'room', pressure: 0 },
      { id: 'outdoors', pressure: 0 },
    ],
    edges: [{ id: 'run', from: 'room', to: 'outdoors', parts, fan: run.fan }],
    air: standardAir,
  });
  if (!solution.converged) throw new Error(solution.reason);
  return solution.flows.get('run') ?? Number.NaN;
}

const lost = (better: Run, worse: Run): number => 1 - delivered(worse) / delivered(better);

function within(value: number, [least, most]: readonly [number, number]): void {
  expect(value).toBeGreaterThanOrEqual(least);
  expect(value).toBeLessThanOrEqual(most);
}

describe('facts of the trade (common practice)', () => {
  test('a 6 in round duct is about 27 to 28.5 square inches', () => {
    within(area(roundInches(6)) / INCH ** 2, [27, 28.5]);
  });

  test('a cap of about 20 square inches on a short 6 in run costs 25 to 30 % of the air: the exit rules, the fan holds its pressure', () => {
    const run = { inches: 6, feet: 8, bends: [], fan: steady(120) };
    within(lost({ ...run, cap: 'wall-flap' }, { ...run, cap: 'wall-flap-small' }), [0.25, 0.3]);
  });

  test('squeezing 8 in to 6 in for the whole run costs about half: 20 ft and two bends, the fan holds its pressure', () => {
    const run = { feet: 20, bends: [1, 1], fan: steady(150) };
    within(lost({ ...run, inches: 8 }, { ...run, inches: 6, collar: 8 }), [0.4, 0.55]);
  });

  test('with an ordinary blower that gains pressure as it is choked, the same squeeze costs less than half but much', () => {
    const run = { feet: 20, bends: [1, 1], fan: blower(900, 1.2) };
    within(lost({ ...run, inches: 8 }, { ...run, inches: 6, collar: 8 }), [0.25, 0.5]);
  });

  test('an ordinary tight square bend costs 10 to 15 %: three-piece r/D 0.5 on 20 ft of 6 in, or r/D 0.75 on 10 ft, the fan holds its pressure', () => {
    const run = { inches: 6, fan: steady(120) };
    for (const [radiusRatio, feet] of [
      [0.5, 20],
      [0.75, 10],
    ] as const)
      within(lost({ ...run, feet, bends: [] }, { ...run, feet, bends: [radiusRatio] }), [0.1, 0.15]);
  });

  test('each further bend costs less than the one before, and a gentle one (r/D 1.5) about a third of a tight one', () => {
    const run = { inches: 6, feet: 10, fan: steady(120) };
    const first = lost({ ...run, bends: [] }, { ...run, bends: [0.5] });
    const second = lost({ ...run, bends: [0.5] }, { ...run, bends: [0.5, 0.5] });
    expect(second).toBeLessThan(first);
    within(lost({ ...run, bends: [] }, { ...run, bends: [1.5] }) / first, [0.3, 0.5]);
  });

  test('a run of over 50 ft suffers: a 600 cfm blower on 55 ft of 6 in duct delivers 15 to 40 % less than on 15 ft', () => {
    const run = { inches: 6, bends: [1], fan: blower(600, 0.8) };
    within(lost({ ...run, feet: 15 }, { ...run, feet: 55 }), [0.15, 0.4]);
  });

  test('6 in carries a 30 to 36 in wall hood, 8 in a 42 in one, 10 in heavy cooking, within 1000 to 2000 fpm', () => {
    const speed = (cfm: number, inches: number) => (cfm * CFM) / area(roundInches(inches)) / FPM;
    for (const [cfm, inches] of [
      [250, 6],
      [300, 6],
      [350, 8],
      [600, 8],
      [700, 10],
      [1000, 10],
    ] as const)
      within(speed(cfm, inches), [1000, 2000]);
  });

  test('where the duct is the bottleneck, half again the pressure hardly moves a quarter more air', () => {
    const run: Run = { inches: 4, feet: 20, bends: [0.5, 0.5], fan: steady(150) };
    within(delivered({ ...run, fan: steady(225) }) / delivered(run) - 1, [0.15, 0.25]);
  });

  test('two 45° bends cost more than one 90° bend of the same radius, and less than a tight one', () => {
    const section: Section = roundInches(6);
    const c = (angle: number, radiusRatio: number) =>
      bendLoss({ kind: 'three-piece', angle, radiusRatio, section }).c;
    expect(2 * c(45, 1.5)).toBeGreaterThan(c(90, 1.5));
    expect(2 * c(45, 1.5)).toBeLessThan(c(90, 0.5));
  });

  test('a 3 1/4 x 10 in stack has 15 % more area than a 6 in round duct and carries only about as much', () => {
    const stack: Section = { shape: 'rectangular', width: 10 * INCH, height: 3.25 * INCH };
    const carried = (section: Section) => {
      const sheet = roughnessOf('galvanized', section).roughness;
      const run = {
        nodes: [
          { id: 'a', pressure: 100 },
          { id: 'b', pressure: 0 },
        ],
        air: standardAir,
      };
      const solution = solveNetwork({
        ...run,
        edges: [{ id: 'd', from: 'a', to: 'b', parts: [duct(section, 10, sheet)] }],
      });
      if (!solution.converged) throw new Error(solution.reason);
      return solution.flows.get('d') ?? Number.NaN;
    };
    within(area(stack) / area(roundInches(6)), [1.14, 1.16]);
    within(carried(stack) / carried(roundInches(6)), [0.95, 1.05]);
  });
});
