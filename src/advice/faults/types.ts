import faultFile from '#shared/faults.json' with { type: 'json' };
import type { Sourced } from '../../hydraulics/catalogue.ts';
import { inWords } from '../../words/catalogue.ts';

export type CauseId =
  | 'dirty-filter'
  | 'stuck-flap'
  | 'blocked-cap'
  | 'crushed-flexible'
  | 'hidden-section'
  | 'leak'
  | 'slow-fan'
  | 'tight-house';

/** What a cause's size is a fraction of: the opening that is closed, the diameter, the speed, the house's leaks. */
export type SizeKind = 'blocked' | 'smaller' | 'hole' | 'slower' | 'tighter';

export interface CauseRow extends Sourced {
  readonly id: CauseId;
  readonly name: string;
  readonly what: string;
  readonly size: SizeKind;
  /** Relative, before anything is measured: common practice. */
  readonly plausibility: number;
  readonly look: string;
  readonly fix: string;
}

export const causes = inWords('faults', faultFile.rows as readonly CauseRow[]);

/** The row of a cause; refuses one that is not there. */
export function causeRow(id: CauseId): CauseRow {
  const row = causes.find((each) => each.id === id);
  if (!row) throw new RangeError(`no cause "${id}"`);
  return row;
}

/** A cause at a place of the run. */
export interface Site {
  readonly cause: CauseId;
  /** The node or segment that it is shown at. */
  readonly node?: string;
  readonly segment?: string;
  /** Metres along the segment from its `from` node. */
  readonly along?: number;
}

/** A cause at its place with its size, a fraction from 0 (nothing wrong). */
export interface Fault extends Site {
  readonly size: number;
}

export type MeasuredKind =
  | 'hood air'
  | 'cap air'
  | 'collar static'
  | 'duct static'
  | 'house pressure'
  | 'sound';

/** How the house stood when it was measured. */
export type Condition = 'as used' | 'window open' | 'filters out';

/** What can be measured: where, at which speed, and how. */
export interface Probe {
  readonly kind: MeasuredKind;
  /** Index into the solution's speeds. */
  readonly speed: number;
  /** The node just before which the static pressure in the duct is taken. */
  readonly node?: string;
  readonly condition: Condition;
}

/** SI: m3/s, Pa against the kitchen (the house against outdoors, below zero where it is drawn down), dBA. */
export interface Measurement extends Probe {
  readonly value: number;
}

/**
 * One standard deviation of a measurement: 5 % of it and a floor that the instrument adds. For sound it is what one
 * reading differs from another by; see `soundInCommon`. Common practice.
 */
export function spread(kind: MeasuredKind, value: number): number {
  switch (kind) {
    case 'sound':
      return 1.5;
    case 'house pressure':
      return Math.hypot(0.05 * value, 0.5);
    case 'collar static':
    case 'duct static':
      return Math.hypot(0.05 * value, 1);
    default:
      return Math.hypot(0.05 * value, 0.001);
  }
}

/** What the sound model is good to, dB: one standard deviation, the same at every speed of a hood. Common practice. */
export const soundInCommon = 5;
