import file from '#shared/supports.json' with { type: 'json' };
import type { Section, SourceKind } from '../../hydraulics/types.ts';
import { isFlexible } from './part.ts';

/** How a kind of duct is sold, cut and joined. */
export interface Make {
  readonly id: string;
  readonly name: string;
  readonly shapes: readonly Section['shape'][];
  readonly materials: readonly string[];
  /** Stock length, m. */
  readonly length: number;
  /** What each piece loses in going into or over its neighbours, m. */
  readonly lap: number;
  /** What a cut takes, m. */
  readonly kerf: number;
  /** No piece is cut shorter than this where a longer one can give way, m. */
  readonly leastPiece: number;
  readonly connector: {
    readonly row: 'coupling' | 'slip-and-drive';
    readonly at: 'between lengths' | 'every joint';
  } | null;
  /** At each side of a joint. */
  readonly fasteners: number;
  readonly clamps: number;
  readonly seal: 'sealant' | 'tape' | null;
  readonly source: string;
  readonly sourceKind: SourceKind;
  readonly notes: readonly string[];
}

export const makes = file.makes as readonly Make[];

/** A band of sealant: litres a metre of joint. Tape: what is added to its length for its ends, as a share. */
export const sealing = file.sealing as {
  readonly litresPerMetre: number;
  readonly tapeLap: number;
  readonly source: string;
  readonly sourceKind: SourceKind;
};

/** How duct of a material and shape is sold and joined; what the list does not know as crimped pipe or sheet duct. */
export function makeOf(section: Section, material: string): Make {
  const found =
    makes.find(({ shapes, materials }) => shapes.includes(section.shape) && materials.includes(material)) ??
    makes.find(({ id }) => id === (section.shape === 'round' ? 'crimped' : 'sheet'));
  if (!found) throw new Error('shared/supports.json has no crimped pipe or no sheet duct');
  return found;
}

/** m between hangers of level duct. */
export function hangerSpacing(material: string): number {
  return file.hangerSpacing[isFlexible(material) ? 'flexible' : 'rigid'];
}

/** A leg shorter than this needs no hanger of its own, m. */
export const leastHungLeg: number = file.leastHungLeg;
