import { airOf } from '../hydraulics/air.ts';
import { findCap } from '../hydraulics/catalogue.ts';
import { sonesFromDecibelA } from '../hydraulics/decibel.ts';
import { fanTotalPressure, freeDelivery } from '../hydraulics/fan.ts';
import type { WayLoss } from '../hydraulics/junction-solve.ts';
import { area, hydraulicDiameter } from '../hydraulics/section.ts';
import {
  combine,
  type DuctPath,
  fanHeardAt,
  fanPower,
  fanShift,
  fittingPower,
  flowNoiseShape,
  heardEnergy,
  PLACES,
  SOUND_UNCERTAINTY,
  type SoundCause,
  type SoundPower,
  straightDuctPower,
} from '../hydraulics/sound.ts';
import type { Air, FanCurve, Provenance } from '../hydraulics/types.ts';
import { words } from '../words/index.ts';
import type { Hood, Scheme } from './document.ts';
import { lazily, memoise } from './memo.ts';
import type { PlannedFitting } from './plan.ts';
import { carrierOf, coefficientAt, isAtStart, type LegFlow, velocityAt, wayId } from './results.ts';
import { curveAt, type Placed, type Scene, settingOf } from './setting.ts';
import type { BoosterResult, FittingKind, SoundResult, SoundSourceResult } from './solution.ts';

const say = words.route.sound;

/** Static pressure at which a hood's sound is taken to be rated, Pa: 0.1 in w.g. Common practice, from memory. */
const SOUND_RATED_AT = 24.908891;

const provenance: Provenance = {
  row: 'formulas/sound',
  source: say.source,
  sourceKind: 'memory',
  notes: [say.sones, say.limits],
};

/** What a fitting's self-noise is told as. */
export const soundCauses: Readonly<Partial<Record<FittingKind, SoundCause>>> = {
  bend: 'bend',
  transition: 'transition',
  cap: 'cap',
  exit: 'cap',
  'backdraught-damper': 'damper',
  damper: 'damper',
};

/** A source before it is heard: its power, how far along the run it is, and past how many bends. */
interface Sounding extends SoundPower, Pick<SoundSourceResult, 'cause' | 'at'> {
  /** What makes the noise of the air; none of a fan. */
  readonly velocity: number;
  readonly area: number;
  readonly c: number | null;
  readonly distance: number;
  readonly passed: number;
  /** Where it sounds straight into the open. */
  readonly open: 'cook' | 'outside' | null;
}

/**
 * The sound of one hood at one speed: its fan at the point where it works, the fans in its run, and the
 * noise that the air makes in straight duct, bends, dampers, changes of size and the opening of the cap,
 * each carried along the run to the cook's head and to the outside. Other hoods on the same duct are left
 * out. An estimate that ranks routes, ±5 dB.
 */
export function soundOf(
  scene: Pick<Scene, 'air' | 'scheme' | 'placed' | 'plan'>,
  { hood }: Placed,
  setting: number,
  run: readonly LegFlow[],
  boosters: readonly BoosterResult[],
  works: { readonly flow: number; readonly totalPressure: number },
): SoundResult {
  const { air, placed } = scene;
  const length = run.reduce((sum, { leg }) => sum + leg.length, 0);
  const last = run.at(-1)?.leg.hydraulicDiameter ?? hydraulicDiameter(hood.collar);
  const opening = hydraulicDiameter(hood.collar);
  const rated = hoodFan(hood, setting, works, air);
  const parts = soundings(scene, run, boosters, rated.power);
  const bends = parts.reduce((sum, { cause }) => sum + (cause === 'bend' ? 1 : 0), 0);
  const toCook = ({ open, distance, passed }: Sounding): DuctPath | null =>
    open === 'cook' ? null : { length: distance, bends: passed, opening };
  const toOutside = ({ open, distance, passed }: Sounding): DuctPath | null =>
    open === 'outside'
      ? null
      : { length: Math.max(0, length - distance), bends: bends - passed, opening: last };
  const atCook = parts.map((part) => heardEnergy(part, 'cook', toCook(part)));
  const atCap = parts.map((part) => heardEnergy(part, 'outside', toOutside(part)));
  const at = (energies: readonly number[]) => {
    const { level, byCause } = combine(parts, energies);
    return { level, sones: sonesFromDecibelA(level), byCause };
  };
  const sources = lazily(() =>
    parts.map(
      (part, i): SoundSourceResult => ({
        cause: part.cause,
        at: part.at,
        flow: part.cause === 'fan' ? null : { velocity: part.velocity, area: part.area, c: part.c },
        toCook: toCook(part),
        toOutside: toOutside(part),
        cook: 10 * Math.log10(atCook[i] as number),
        outside: 10 * Math.log10(atCap[i] as number),
      }),
    ),
  );
  const inRun = boosters.map(({ name }) => say.booster(name));
  return {
    cook: at(atCook),
    outside: at(atCap),
    get sources() {
      return sources();
    },
    uncertainty: SOUND_UNCERTAINTY,
    fan: rated.point,
    assumptions: [rated.assumption, ...inRun, ...(placed.length > 1 ? [say.others] : []), PLACES],
    provenance,
  };
}

/** Everything in a run that sounds, in the order of the air, the hood's fan first. */
function soundings(
  { air, scheme, plan }: Pick<Scene, 'air' | 'scheme' | 'plan'>,
  run: readonly LegFlow[],
  boosters: readonly BoosterResult[],
  hoodPower: SoundPower,
): Sounding[] {
  const parts: Sounding[] = [];
  let start = 0;
  let passed = 0;
  const fan = (at: string, { overall, shape }: SoundPower, open: 'cook' | null) =>
    parts.push({
      cause: 'fan',
      at,
      overall,
      shape,
      velocity: 0,
      area: 0,
      c: null,
      distance: start,
      passed,
      open,
    });
  fan('fan', hoodPower, 'cook');
  for (const { leg, flow, ways } of run) {
    const velocity = Math.abs(flow) / leg.area;
    parts.push({
      cause: 'straight duct',
      at: leg.id,
      overall: straightDuctPower(velocity, leg.area),
      shape: flowNoiseShape(velocity),
      velocity,
      area: leg.area,
      c: null,
      distance: start + leg.length / 2,
      passed,
      open: null,
    });
    const fitting = (
      at: string,
      kind: FittingKind,
      air: Pick<Sounding, 'velocity' | 'area'> & { readonly c: number },
      along: number,
    ) => {
      parts.push({
        cause: soundCauses[kind] ?? 'other fitting',
        at,
        overall: fittingPower(air.velocity, air.c, air.area),
        shape: flowNoiseShape(air.velocity),
        velocity: air.velocity,
        area: air.area,
        c: air.c,
        distance: start + along,
        passed,
        open: kind === 'cap' || kind === 'exit' ? 'outside' : null,
      });
      if (kind === 'bend') passed += 1;
    };
    const junction = (way: WayLoss) =>
      fitting(
        wayId(way, leg),
        'junction',
        { velocity: way.velocity, c: way.c, area: area(carrierOf(way, plan, leg).section) },
        isAtStart(way, leg) ? 0 : leg.length,
      );
    for (const way of ways) if (isAtStart(way, leg)) junction(way);
    for (const planned of leg.fittings)
      fitting(planned.id, planned.kind, inItsOpening(planned, flow, air, scheme), planned.distance);
    for (const way of ways) if (!isAtStart(way, leg)) junction(way);
    start += leg.length;
    const booster = boosters.find(({ node }) => node === leg.to);
    if (booster) fan(booster.node, fanPower(booster.flow, booster.pressure), null);
  }
  return parts;
}

/** Where a fitting's self-noise is made; a cap's in its own opening, with its coefficient carried over to it. */
function inItsOpening(fitting: PlannedFitting, flow: number, air: Air, scheme: Scheme) {
  const whole = area(fitting.loss.section);
  const opening = fitting.kind === 'cap' ? openingOf(fitting, scheme, whole) : whole;
  const ratio = opening / whole;
  return {
    velocity: velocityAt(fitting, flow) / ratio,
    c: coefficientAt(fitting, flow, air) * ratio * ratio,
    area: opening,
  };
}

function openingOf({ at }: PlannedFitting, scheme: Scheme, duct: number): number {
  const node = scheme.nodes.find((candidate) => candidate.id === at);
  const row = node?.cap === undefined ? undefined : findCap(node.cap);
  return node?.capOpening ?? (row ? row.openingRatio * duct : duct);
}

/** Sound power of the hood's own fan where it works, from its rated sound or, without one, from flow and pressure. */
function hoodFan(
  hood: Hood,
  setting: number,
  works: { readonly flow: number; readonly totalPressure: number },
  air: Air,
): { readonly power: SoundPower; readonly point: SoundResult['fan']; readonly assumption: string } {
  const speed = hood.speeds[settingOf(hood, setting)];
  const made = curveAt(hood, setting);
  const flow = Math.max(works.flow, 1e-6);
  const loudest = made.known ? loudestFlow(made.curve) : 0;
  const point =
    made.known && flow < loudest
      ? { flow: loudest, pressure: fanTotalPressure(made.curve, loudest, air) }
      : { flow, pressure: Math.max(works.totalPressure, 1e-3) };
  if (speed?.sound === undefined || !made.known)
    return {
      power: fanPower(point.flow, point.pressure),
      point: { rated: null, ...point },
      assumption: say.unrated(hood.name, speed?.name ?? ''),
    };
  const { words, ...at } = ratedPoint(made.curve, air);
  const level = speed.sound + fanShift(at, point);
  return {
    power: fanHeardAt(level),
    point: { rated: { level: speed.sound, ...at }, ...point },
    assumption: say.rated(speed.sound, hood.name, speed.name, words),
  };
}

/** The point of a curve that its sound is taken to be rated at: 25 Pa static, or free delivery where it starts below. */
function ratedPoint(curve: FanCurve, air: Air) {
  const flow = ratedFlow(curve);
  const words = flow === freeDelivery(curve) ? say.freeDelivery : say.ratedPoint;
  return { flow, pressure: Math.max(fanTotalPressure(curve, flow, air), 1e-3), words };
}

/** The highest flow at which a curve gives 25 Pa in its own basis, by bisection; free delivery where it never does. */
const ratedFlow = memoise((curve: FanCurve): number => {
  const own = airOf(curve.density, 1.8e-5);
  const at = (q: number) => {
    const velocityPart = curve.basis === 'static' ? (curve.density * (q / curve.collarArea) ** 2) / 2 : 0;
    return fanTotalPressure(curve, q, own) - velocityPart;
  };
  let above = freeDelivery(curve);
  const high = curve.points.findLast(([, p]) => p > SOUND_RATED_AT);
  if (!high) return above;
  let below = high[0];
  while (above - below > 1e-9) {
    const middle = (above + below) / 2;
    if (at(middle) > SOUND_RATED_AT) below = middle;
    else above = middle;
  }
  return below;
});

/**
 * The flow at which `10 log Q + 20 log p` of a curve is greatest, m3/s. The rule says that a fan throttled
 * further gets quieter, which fans do not do (common practice); there the greatest is held.
 */
const loudestFlow = memoise((curve: FanCurve): number => {
  const own = airOf(curve.density, 1.8e-5);
  const most = freeDelivery(curve);
  let loudest = most;
  let strength = 0;
  for (let i = 1; i <= 200; i++) {
    const q = (most * i) / 200;
    const reached = q * Math.max(0, fanTotalPressure(curve, q, own)) ** 2;
    if (reached > strength) [loudest, strength] = [q, reached];
  }
  return loudest;
});
