import { airOf } from '../hydraulics/air.ts';
import { findCap } from '../hydraulics/catalogue.ts';
import { sonesFromDecibelA } from '../hydraulics/decibel.ts';
import { fanTotalPressure, freeDelivery } from '../hydraulics/fan.ts';
import { area, hydraulicDiameter } from '../hydraulics/section.ts';
import {
  combine,
  type DuctPath,
  fanAtCook,
  fanPower,
  fanShift,
  fittingPower,
  flowNoiseSpectrum,
  heard,
  PLACES,
  powerBehind,
  SOUND_UNCERTAINTY,
  type SoundCause,
  straightDuctPower,
} from '../hydraulics/sound.ts';
import type { Air, FanCurve, Provenance } from '../hydraulics/types.ts';
import { words } from '../words/index.ts';
import type { Hood, Scheme } from './document.ts';
import { memoise } from './memo.ts';
import type { LegResult } from './results.ts';
import { curveAt, type Placed, type Scene, settingOf } from './setting.ts';
import type { BoosterResult, FittingResult, SoundResult, SoundSourceResult } from './solution.ts';

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
export const soundCauses: Readonly<Partial<Record<FittingResult['kind'], SoundCause>>> = {
  bend: 'bend',
  transition: 'transition',
  cap: 'cap',
  exit: 'cap',
  'backdraught-damper': 'damper',
  damper: 'damper',
};

/** A source before it is heard: its octaves, and what is told of it. */
type Sounding = Omit<SoundSourceResult, 'cook' | 'outside'> & { readonly power: readonly number[] };

/**
 * The sound of one hood at one speed: its fan at the point where it works, the fans in its run, and the
 * noise that the air makes in straight duct, bends, dampers, changes of size and the opening of the cap,
 * each carried along the run to the cook's head and to the outside. Other hoods on the same duct are left
 * out. An estimate that ranks routes, ±5 dB.
 */
export function soundOf(
  { air, scheme, placed }: Pick<Scene, 'air' | 'scheme' | 'placed'>,
  { hood }: Placed,
  setting: number,
  run: readonly LegResult[],
  boosters: readonly BoosterResult[],
  works: { readonly flow: number; readonly totalPressure: number },
): SoundResult {
  const length = run.reduce((sum, { leg }) => sum + leg.length, 0);
  const bends = run.reduce((sum, { fittings }) => sum + fittings.filter(isBend).length, 0);
  const last = run.at(-1)?.leg.hydraulicDiameter ?? hydraulicDiameter(hood.collar);
  const back = (distance: number, passed: number): DuctPath => ({
    length: distance,
    bends: passed,
    opening: hydraulicDiameter(hood.collar),
  });
  const on = (distance: number, passed: number): DuctPath => ({
    length: Math.max(0, length - distance),
    bends: bends - passed,
    opening: last,
  });
  const rated = hoodFan(hood, setting, works, air);
  const parts: Sounding[] = [
    { cause: 'fan', at: 'fan', flow: null, power: rated.power, toCook: null, toOutside: on(0, 0) },
  ];
  let distance = 0;
  let passed = 0;
  for (const { leg, segment, fittings } of run) {
    const middle = distance + leg.length / 2;
    const { velocity } = segment;
    parts.push({
      cause: 'straight duct',
      at: leg.id,
      flow: { velocity, area: leg.area, c: null },
      power: flowNoiseSpectrum(straightDuctPower(velocity, leg.area), velocity),
      toCook: back(middle, passed),
      toOutside: on(middle, passed),
    });
    fittings.forEach((fitting, i) => {
      const at = distance + (leg.fittings[i]?.distance ?? 0);
      const terminal = fitting.kind === 'cap' || fitting.kind === 'exit';
      const flow = inItsOpening(fitting, scheme);
      parts.push({
        cause: soundCauses[fitting.kind] ?? 'other fitting',
        at: fitting.id,
        flow,
        power: flowNoiseSpectrum(fittingPower(flow.velocity, flow.c, flow.area), flow.velocity),
        toCook: back(at, passed),
        toOutside: terminal ? null : on(at, passed),
      });
      if (isBend(fitting)) passed += 1;
    });
    distance += leg.length;
    const booster = boosters.find(({ node }) => node === leg.to);
    if (booster) {
      parts.push({
        cause: 'fan',
        at: booster.node,
        flow: null,
        power: fanPower(booster.flow, booster.pressure),
        toCook: back(distance, passed),
        toOutside: on(distance, passed),
      });
    }
  }
  const arriving = parts.map(heard);
  const at = (place: 'cook' | 'outside') => {
    const { level, byCause, levels } = combine(
      parts.map(({ cause }, i) => ({ cause, spectrum: arriving[i]?.[place] ?? [] })),
    );
    return { heard: { level, sones: sonesFromDecibelA(level), byCause }, levels };
  };
  const [cook, outside] = [at('cook'), at('outside')];
  const inRun = boosters.map(({ name }) => say.booster(name));
  return {
    cook: cook.heard,
    outside: outside.heard,
    sources: parts.map(({ power: _, ...part }, i) => ({
      ...part,
      cook: cook.levels[i] as number,
      outside: outside.levels[i] as number,
    })),
    uncertainty: SOUND_UNCERTAINTY,
    fan: rated.point,
    assumptions: [rated.assumption, ...inRun, ...(placed.length > 1 ? [say.others] : []), PLACES],
    provenance,
  };
}

const isBend = (fitting: FittingResult): boolean => fitting.kind === 'bend';

/** Where a fitting's self-noise is made; a cap's in its own opening, with its coefficient carried over to it. */
function inItsOpening(fitting: FittingResult, scheme: Scheme) {
  const whole = area(fitting.section);
  const opening = fitting.kind === 'cap' ? openingOf(fitting, scheme, whole) : whole;
  const ratio = opening / whole;
  return { velocity: fitting.velocity / ratio, c: fitting.c * ratio * ratio, area: opening };
}

function openingOf({ at }: FittingResult, scheme: Scheme, duct: number): number {
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
): { readonly power: readonly number[]; readonly point: SoundResult['fan']; readonly assumption: string } {
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
    power: powerBehind(fanAtCook(level)),
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
