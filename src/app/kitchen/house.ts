import type { Job } from '../../graph/document.ts';
import { applianceLimit } from '../../graph/house.ts';
import type { HouseResult } from '../../graph/solution.ts';
import { type LimitRow, limits } from '../../hydraulics/catalogue.ts';

export type DrawnHouse = NonNullable<Job['house']>;

/** Changes fields of the house as one undo step of that name. */
export type ChangeHouse = (label: string, fields: Partial<DrawnHouse>) => void;

/** Air changes an hour at 50 Pa of a house of `volume` (m3) that leaks `flow` (m3/s) there. */
export function ach50From(flow: number, volume: number): number {
  return (3600 * flow) / volume;
}

/** What a blower door blows at 50 Pa, m3/s. */
export function flowAt50(ach50: number, volume: number): number {
  return (ach50 * volume) / 3600;
}

const notAppliances = new Set(['none', 'continuous', 'dp-chimney-fails']);

/** The combustion appliances that the catalogue has a depressurization limit for, the touchiest first. */
export const appliances: readonly LimitRow[] = limits
  .filter((row) => row.topic === 'depressurization' && !notAppliances.has(row.id))
  .sort((a, b) => Number(a.value) - Number(b.value));

/** True where a house stands further below outdoors than what burns in it bears. */
export function beyondLimit({ limit, makeUpNeeded }: HouseResult): boolean {
  return limit !== null && makeUpNeeded !== null;
}

/** The names with one appliance of the catalogue put in or taken out, however it was written before. */
export function withAppliance(names: readonly string[], row: LimitRow, wanted: boolean): string[] {
  const others = names.filter((name) => applianceLimit(name)?.id !== row.id);
  return wanted ? [...others, row.name] : others;
}

/** Names that the catalogue knows no limit for. */
export function unknownAppliances(names: readonly string[]): string[] {
  return names.filter((name) => applianceLimit(name) === undefined);
}
