import { airOf, STANDARD_DENSITY } from '../../hydraulics/air.ts';
import { fanTotalPressure, freeDelivery } from '../../hydraulics/fan.ts';
import type { FanCurve } from '../../hydraulics/types.ts';
import { words } from '../../words/index.ts';
import type { FanSpeed, Hood } from '../document.ts';
import { speedCurve } from '../speeds.ts';
import { type DraftJob, plainCopy } from './find.ts';

const says = words.route.fanData;

/** The ways in which people have a fan's data, each a field of a speed. */
export const fanDataKinds = ['curve', 'certified', 'freeAir', 'single', 'scaledFrom'] as const;

export type FanDataKind = (typeof fanDataKinds)[number];

/** What is known of a fan at one speed: exactly one of the fields. */
export type FanData = {
  [K in FanDataKind]: { readonly [F in K]: NonNullable<FanSpeed[F]> };
}[FanDataKind];

/** How the data of a speed are given; undefined where none are. */
export function fanDataKind(speed: FanSpeed): FanDataKind | undefined {
  return fanDataKinds.find((kind) => speed[kind] !== undefined);
}

/**
 * The data of a speed told another way, as near as the kind allows, to start editing from. Undefined
 * where the speed has no curve to start from, or there is no other speed to scale from.
 */
export function fanDataAs(hood: Hood, index: number, kind: FanDataKind): FanData | undefined {
  const speed = hood.speeds[index];
  const known = speedCurve(hood, index);
  if (!speed || !known.known) return undefined;
  const { curve, ratedFlow } = known;
  const end = freeDelivery(curve);
  const at = (flow: number): [number, number] => [rounded(flow, 5), rounded(ownPressure(curve, flow), 1)];
  switch (kind) {
    case 'curve': {
      if (!curve.interpolation) return { curve: curve.points.map(([q, p]) => [q, p]) };
      return { curve: [0, 0.25, 0.5, 0.7, 0.85, 1].map((share) => at(share * end)) };
    }
    case 'certified':
      return { certified: [at(0.5 * end), at(0.85 * end)] };
    case 'freeAir':
      return { freeAir: { flow: rounded(end, 5), shutOffPressure: at(0)[1] } };
    case 'single':
      return { single: { flow: ratedFlow } };
    case 'scaledFrom': {
      const other = hood.speeds.findIndex((each, i) => i !== index && !leansOn(hood, each, speed.name));
      const base = hood.speeds[other];
      const baseFlow = speedCurve(hood, other).ratedFlow;
      if (!base || !(baseFlow > 0)) return undefined;
      return { scaledFrom: { speed: base.name, ratio: rounded(Math.min(5, ratedFlow / baseFlow), 4) } };
    }
  }
}

/** Speeds that a speed may be scaled from: all but itself and those that are scaled from it. */
export function scalableFrom(hood: Hood, index: number): string[] {
  const name = hood.speeds[index]?.name ?? '';
  return hood.speeds.filter((each, i) => i !== index && !leansOn(hood, each, name)).map((each) => each.name);
}

/** Gives a speed data of some kind in the place of what it had. */
export function setFanData(job: DraftJob, hoodId: string, index: number, data: FanData): void {
  const speed = speedIn(job, hoodId, index);
  for (const kind of fanDataKinds) delete speed[kind];
  Object.assign(speed, plainCopy(data));
}

/** Adds a speed like the last one, by the fan laws at 1.2 times its speed of rotation, and gives its index. */
export function addSpeed(job: DraftJob, hoodId: string): number {
  const { speeds } = hoodIn(job, hoodId);
  const last = speeds.at(-1);
  const names = new Set(speeds.map((speed) => speed.name));
  let number = speeds.length + 1;
  while (names.has(says.speed(number))) number += 1;
  const name = says.speed(number);
  speeds.push(
    last
      ? {
          name,
          pressureBasis: last.pressureBasis,
          density: last.density,
          scaledFrom: { speed: last.name, ratio: 1.2 },
        }
      : { name, pressureBasis: 'static', density: STANDARD_DENSITY, single: { flow: 0.1 } },
  );
  return speeds.length - 1;
}

/** Takes a speed away; those that are scaled from it keep their curve as points. Refuses the last one by `false`. */
export function removeSpeed(job: DraftJob, hoodId: string, index: number): boolean {
  const draft = hoodIn(job, hoodId);
  const hood = plainCopy(draft) as Hood;
  const gone = hood.speeds[index];
  if (!gone || hood.speeds.length < 2) return false;
  hood.speeds.forEach((speed, i) => {
    const curve = speed.scaledFrom?.speed === gone.name ? fanDataAs(hood, i, 'curve') : undefined;
    if (curve) setFanData(job, hoodId, i, curve);
  });
  draft.speeds.splice(index, 1);
  return true;
}

/** Renames a speed, and what is scaled from it with it. Refuses a name that another speed has by `false`. */
export function renameSpeed(job: DraftJob, hoodId: string, index: number, name: string): boolean {
  const { speeds } = hoodIn(job, hoodId);
  const speed = speeds[index];
  if (!speed || speeds.some((other, i) => i !== index && other.name === name)) return false;
  for (const other of speeds) if (other.scaledFrom?.speed === speed.name) other.scaledFrom.speed = name;
  speed.name = name;
  return true;
}

/** The curve's own pressure, as it is given and at the density it was rated at, Pa. */
function ownPressure(curve: FanCurve, flow: number): number {
  const total = fanTotalPressure(curve, flow, airOf(curve.density, 1.8e-5));
  return curve.basis === 'total' ? total : total - (curve.density / 2) * (flow / curve.collarArea) ** 2;
}

/** True where a speed is scaled, however far round, from the one of that name. */
function leansOn(hood: Hood, speed: FanSpeed, name: string): boolean {
  const seen = new Set<string>();
  let at: FanSpeed | undefined = speed;
  while (at?.scaledFrom && !seen.has(at.name)) {
    if (at.scaledFrom.speed === name) return true;
    seen.add(at.name);
    const next: string = at.scaledFrom.speed;
    at = hood.speeds.find((each) => each.name === next);
  }
  return false;
}

function hoodIn(job: DraftJob, hoodId: string) {
  const hood = job.hoods.find((each) => each.id === hoodId);
  if (!hood) throw new Error(`no hood "${hoodId}"`);
  return hood;
}

function speedIn(job: DraftJob, hoodId: string, index: number) {
  const speed = hoodIn(job, hoodId).speeds[index];
  if (!speed) throw new Error(`no speed ${index} of hood "${hoodId}"`);
  return speed;
}

function rounded(value: number, decimals: number): number {
  return Number(value.toFixed(decimals));
}
