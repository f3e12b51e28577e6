import { type BendRow, findBend, findMaterial } from '../../hydraulics/catalogue.ts';
import type { Section } from '../../hydraulics/types.ts';
import type { BendChoice, Node, Scheme, Segment } from '../document.ts';

type Defaults = Scheme['defaults'];

const lastResort = { material: 'galvanized', bend: 'three-piece', flexible: 'flexible' } as const;

/** A choice with what became of it: `asked` is there where the catalogue does not know it or it cannot serve. */
export interface Resolved {
  readonly id: string;
  readonly asked?: string;
}

/** The section a segment is laid in: its own, else the scheme's. */
export function sectionOf(segment: Segment, defaults: Defaults): Section {
  return segment.duct ?? defaults.duct;
}

/** A segment's material: its own, else the scheme's; galvanized steel where the catalogue knows neither. */
export function materialOf(segment: Segment, defaults: Defaults): Resolved {
  const asked = segment.material ?? defaults.material;
  if (findMaterial(asked)) return { id: asked };
  const fallback = findMaterial(defaults.material) ? defaults.material : lastResort.material;
  return { id: fallback, asked };
}

/** Duct that is bent by hand on the site, which makes its own turns. */
export function isFlexible(material: string): boolean {
  return material === 'flexible' || material === 'semi-rigid';
}

function asChoice(choice: string | BendChoice | undefined): BendChoice | undefined {
  return typeof choice === 'string' ? { kind: choice } : choice;
}

function suits(row: BendRow | undefined, section: Section): boolean {
  const shape = section.shape === 'round' ? 'round' : 'rectangular';
  return row !== undefined && (row.section === 'any' || row.section === shape);
}

/**
 * The bend at a turn: the node's own choice; else flexible duct turns by itself; else the scheme's
 * default. On duct of the other shape the catalogue's counterpart stands in; that counts as asking for
 * something else only where the node chose for itself.
 */
export function bendOf(
  node: Node,
  section: Section,
  material: string,
  defaults: Defaults,
): Resolved & { readonly radiusRatio?: number } {
  const usual = isFlexible(material) ? { kind: lastResort.flexible } : asChoice(defaults.bend);
  const choice: BendChoice = node.bend ?? usual ?? { kind: lastResort.bend };
  const row = findBend(choice.kind);
  if (row && suits(row, section)) {
    return { id: row.id, ...(choice.radiusRatio === undefined ? {} : { radiusRatio: choice.radiusRatio }) };
  }
  const known = row ?? findBend(lastResort.bend);
  const id = (known && !suits(known, section) ? known.counterpart : known?.id) ?? lastResort.bend;
  return row && !node.bend ? { id } : { id, asked: choice.kind };
}
