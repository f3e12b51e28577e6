import { findLimit, type LimitRow, limits } from '../hydraulics/catalogue.ts';
import { type House, makeUpFlow, makeUpOpening } from '../hydraulics/house.ts';
import type { Job } from './document.ts';
import { memoise } from './memo.ts';
import type { HouseLimit } from './solution.ts';

type DrawnHouse = NonNullable<Job['house']>;

/** The house of a job as the network takes it: its other fans, which are all taken to run, as one flow. */
export const houseOf = memoise((house: DrawnHouse): House => {
  const otherExhaust = house.otherExhaust.reduce((sum, fan) => sum + fan.flow, 0);
  const { volume, ach50, leakageExponent, makeUpAir } = house;
  return { volume, ach50, leakageExponent, otherExhaust, makeUpAir };
});

/** Rows on house pressure that are not about an appliance. */
const notAppliances = new Set(['continuous', 'dp-chimney-fails']);

/** The depressurization limit that the catalogue has under an appliance's name or id; that of no appliance for "none". */
export function applianceLimit(name: string): LimitRow | undefined {
  const id = slug(name);
  return limits.find(
    (row) =>
      row.topic === 'depressurization' &&
      !notAppliances.has(row.id) &&
      (row.id === id || slug(row.name) === id),
  );
}

function slug(name: string): string {
  return name
    .trim()
    .toLowerCase()
    .replace(/draft/g, 'draught')
    .replace(/[^a-z0-9]+/g, '-');
}

/**
 * How far a house may stand below outdoors: the least limit of its combustion appliances, or the one for a
 * house without any. Null where it has appliances and the catalogue knows none of them.
 */
export const limitOf = memoise((house: DrawnHouse): HouseLimit | null => {
  const known = house.combustion.flatMap((name) => applianceLimit(name) ?? []);
  const [row] = known.sort((a, b) => least(a) - least(b));
  const canSpill = row !== undefined && row.id !== 'none';
  const chosen = row ?? (house.combustion.length === 0 ? findLimit('none') : undefined);
  if (!chosen) return null;
  const { id, name, source, sourceKind } = chosen;
  return { value: least(chosen), appliance: name, canSpill, row: `limits/${id}`, source, sourceKind };
});

function least({ value }: LimitRow): number {
  return typeof value === 'number' ? value : value[0];
}

/**
 * Make-up air in all that holds a house at its limit while the hoods move `exhaust` m3/s there, and the free
 * area of a plain opening that lets so much in, m2.
 *
 * @param density kg/m3
 */
export function makeUpToHold(house: House, exhaust: number, limit: number, density: number) {
  return {
    flow: makeUpFlow(house, exhaust, limit),
    opening: makeUpOpening(house, exhaust, limit, density),
    hoods: exhaust,
  };
}
