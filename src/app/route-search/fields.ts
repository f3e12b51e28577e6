import type { Direction } from '../../advice/route-search/grid.ts';
import type { RoundDuct, RouteQuestion } from '../../advice/route-search/question.ts';
import type { UnitSystem } from '../../graph/document.ts';
import { sectionWords } from '../../graph/sections.ts';
import { bends, ductSizes, findBend, materials } from '../../hydraulics/catalogue.ts';
import { defaultRadiusRatio } from '../../hydraulics/losses/bends.ts';
import { formatLength, INCH } from '../../units/index.ts';
import { words } from '../../words/index.ts';

const says = words.routeSearch.ways;

/** What a person chooses; where the hood is and how much air it moves is read off the drawing. */
export type SearchFields = Pick<
  RouteQuestion,
  'outlet' | 'exits' | 'space' | 'duct' | 'material' | 'bend' | 'clearance' | 'step'
>;

export const outlets: readonly {
  readonly id: string;
  readonly name: string;
  readonly direction: Direction;
}[] = [
  { id: 'up', name: says.up, direction: 4 },
  { id: 'north', name: says.north, direction: 2 },
  { id: 'east', name: says.east, direction: 0 },
  { id: 'south', name: says.south, direction: 3 },
  { id: 'west', name: says.west, direction: 1 },
];

/** Bends that round rigid duct is turned with. */
export const searchBends = bends.filter((row) => row.section !== 'rectangular' && row.id !== 'flexible');

/** Metals that the model code names for the duct of a range hood. */
export const searchMaterials = materials.filter((row) => row.kitchen);

/** Round sizes of the trade, with the one in hand where it is none of them. */
export function roundSizes(units: UnitSystem, duct: RoundDuct) {
  const rows = ductSizes.flatMap(({ id, name, system, section }) =>
    system === units && section.shape === 'round' ? [{ id, name, section }] : [],
  );
  const known = rows.some(({ section }) => Math.abs(section.diameter - duct.diameter) < 1e-6);
  return known ? rows : [{ id: 'own', name: sectionWords(duct, units), section: duct }, ...rows];
}

/** Distances between the places where duct may turn. */
export function stepChoices(units: UnitSystem) {
  const steps = units === 'imperial' ? [2, 3, 4, 6].map((inches) => inches * INCH) : [0.05, 0.075, 0.1, 0.15];
  return steps.map((step) => ({ id: step.toFixed(4), name: formatLength(step, units), step }));
}

/** A bend of another kind begins with the radius that it is usually made with. */
export function bendOfKind(kind: string): SearchFields['bend'] {
  return { kind, radiusRatio: defaultRadiusRatio(kind) };
}

/** A mitre has no radius to choose. */
export function hasRadius(kind: string): boolean {
  return (findBend(kind)?.defaultRadiusRatio ?? 0) > 0;
}
