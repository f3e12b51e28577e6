import { words } from '../../words/index.ts';
import { findJunction, need } from '../catalogue.ts';
import type { Provenance } from '../types.ts';
import { lookUp, type Table, tidy } from './table.ts';

const says = words.losses.junctions;

export interface JunctionQuery {
  /** Between the branch and the straight run, degrees; 90 for a tee. */
  readonly angle: number;
  /** Branch flow over whole flow, 0 to 1. */
  readonly flowRatio: number;
  /** Branch area over the area of the leg that carries the whole flow. */
  readonly areaRatio: number;
  /** True where the branch joins, false where it leaves. */
  readonly converging: boolean;
}

/** Both coefficients refer to the velocity pressure in the leg that carries the whole flow. */
export interface JunctionLoss {
  readonly straightC: number;
  readonly branchC: number;
  readonly provenance: Provenance;
}

/**
 * Loss of a wye or tee by flow and area ratio, for the straight way and for the branch. The straight leg is
 * taken to be as large as the whole-flow leg. C may be negative where the faster stream drags the slower one.
 * Angle is clamped to 15° to 90°, flow ratio to 0 to 1, area ratio to 0.1 to 1, with a note. Refuses numbers
 * that are not numbers. From memory: Idelchik, wyes.
 */
export function junctionLoss(query: JunctionQuery): JunctionLoss {
  const notes: string[] = [];
  const angle = clamp(says.branchAngle, query.angle, 15, 90, notes);
  const q = clamp(says.flowRatio, query.flowRatio, 0, 1, notes);
  const a = clamp(says.areaRatio, query.areaRatio, 0.1, 1, notes);
  const cosine = angle === 90 ? 0 : Math.cos((angle * Math.PI) / 180);
  const id = query.converging ? 'converging' : 'diverging';
  const row = need(findJunction(id), 'junctions', id);
  const loss = query.converging ? converging(angle, q, a, cosine) : diverging(q, a, cosine);
  if (query.converging) notes.push(says.secondOpinion(tidy(branchEntryFactor(angle))));
  return {
    ...loss,
    provenance: { row: `junctions/${row.id}`, source: row.source, sourceKind: row.sourceKind, notes },
  };
}

/**
 * Industrial branch entry factor by angle (15° to 90°, linear between, clamped), on the velocity pressure of
 * the branch. ACGIH Industrial Ventilation; 45°, 60° and 90° from memory.
 */
export function branchEntryFactor(angle: number): number {
  return lookUp(need(findJunction('branch-entry'), 'junctions', 'branch-entry').table as Table, { angle })
    .value;
}

/**
 * Momentum balance of two streams that mix, with Idelchik's corrections: the branch's is scaled by area and
 * flow ratio, and the square tee's straight way is his `1.55 q - q²`, towards which the wye's is led from 60° on.
 */
function converging(angle: number, q: number, a: number, cosine: number) {
  const speed = q / a;
  const drag = (2 * q * q * cosine) / a;
  const scale = a <= 0.35 ? 1 : Math.max(0.9 * (1 - q), 0.55);
  const wye = 1 - (1 - q) ** 2 - drag;
  const tee = 1.55 * q - q * q;
  const towardsTee = Math.max(0, (angle - 60) / 30);
  return {
    branchC: scale * (1 + speed * speed - 2 * (1 - q) ** 2 - drag),
    straightC: wye + towardsTee * (tee - wye),
  };
}

/**
 * A stream that turns off (branch) and the rest that spreads behind it (straight). His correction drops from 1
 * to 0.9 at a branch as fast as 0.8 of the main; it is led down from there to 1 so that the loss has no step.
 */
function diverging(q: number, a: number, cosine: number) {
  const speed = q / a;
  const scale = 1 - 0.1 * Math.min(Math.max((speed - 0.8) / 0.2, 0), 1);
  return { branchC: scale * (1 + speed * speed - 2 * speed * cosine), straightC: 0.4 * q * q };
}

function clamp(name: string, asked: number, least: number, most: number, notes: string[]): number {
  if (Number.isNaN(asked)) throw new RangeError(`the ${name} of a junction is not a number`);
  const value = Math.min(Math.max(asked, least), most);
  if (value !== asked) notes.push(says.clamped(name, tidy(value), tidy(asked)));
  return value;
}
