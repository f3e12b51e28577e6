import { findMaterial } from '../../hydraulics/catalogue.ts';
import type { Section } from '../../hydraulics/types.ts';

/** In the order of a parts list. */
export const partKinds = [
  'duct',
  'bend',
  'transition',
  'junction',
  'cap',
  'in-line',
  'coupling',
  'clamp',
  'fastener',
  'hanger',
  'sealant',
  'tape',
  'insulation',
  'make-up air',
] as const;
export type PartKind = (typeof partKinds)[number];

/** One line of a parts list: what is bought, how much of it, and where it goes. */
export interface Part {
  /** The same for the same thing, whatever the job: `duct/galvanized/round-203`. Prices are kept by it. */
  readonly key: string;
  readonly kind: PartKind;
  /** Catalogue id, or how the thing is made: `conical`, `opening`. */
  readonly row: string;
  /** Metres of duct in the run and of tape, square metres of insulation, litres of sealant, pieces of all else. */
  readonly quantity: number;
  readonly unit: 'm' | 'm2' | 'L' | 'piece';
  /** Its own section; of a change of size the larger, of a junction that of the leg with the whole flow. */
  readonly section?: Section;
  /** The smaller section of a change of size. */
  readonly to?: Section;
  /** Degrees, of a bend. */
  readonly angle?: number;
  readonly radiusRatio?: number;
  /** What it is made of, where that is not its row. */
  readonly material?: string;
  /** Thickness of insulation, m. */
  readonly thickness?: number;
  /** Free area, m2, or flow, m3/s, of make-up air. */
  readonly size?: number;
  /** What all of it weighs, kg; absent where nobody can tell. */
  readonly weight?: number;
  /** Of duct: the stock lengths that it is cut from, by the cutting plan. */
  readonly stock?: { readonly count: number; readonly length: number };
  readonly nodes: readonly string[];
  readonly segments: readonly string[];
}

/** What is paid for: whole stock lengths of duct, what is needed of all else; in the part's unit. */
export function boughtOf({ quantity, stock }: Part): number {
  return stock ? stock.count * stock.length : quantity;
}

/** A part counted in pieces. */
export function piece(
  kind: PartKind,
  row: string,
  quantity: number,
  at: Pick<Part, 'nodes' | 'segments'> & { readonly section?: Section },
  material?: string,
): Part {
  const size = at.section ? `/${sizeKey(at.section)}` : '';
  return {
    ...at,
    key: `${kind}/${row}${size}`,
    kind,
    row,
    quantity,
    unit: 'piece',
    ...(material === undefined ? {} : { material }),
  };
}

/** Lines of the same key as one, in the order of the kinds. A line of which nobody knows the weight has none. */
export function merged(parts: readonly Part[]): Part[] {
  const lines = new Map<string, Part>();
  for (const part of parts) {
    const line = lines.get(part.key);
    lines.set(part.key, line ? sum(line, part) : part);
  }
  return [...lines.values()].sort((a, b) => partKinds.indexOf(a.kind) - partKinds.indexOf(b.kind));
}

function sum({ weight, ...line }: Part, part: Part): Part {
  const known = weight !== undefined && part.weight !== undefined;
  return {
    ...line,
    quantity: line.quantity + part.quantity,
    nodes: [...line.nodes, ...part.nodes.filter((id) => !line.nodes.includes(id))],
    segments: [...line.segments, ...part.segments.filter((id) => !line.segments.includes(id))],
    ...(known ? { weight: weight + (part.weight ?? 0) } : {}),
  };
}

/** True for duct that bends by itself and is pulled to its length. */
export function isFlexible(material: string): boolean {
  return findMaterial(material)?.compression !== undefined || material === 'semi-rigid';
}

/** `round-203`, `rectangular-254x83`: sides to the millimetre, the longer first. */
export function sizeKey(section: Section): string {
  const mm = (metres: number) => Math.round(metres * 1000);
  if (section.shape === 'round') return `round-${mm(section.diameter)}`;
  const [long, short] = [section.width, section.height].sort((a, b) => b - a) as [number, number];
  return `${section.shape}-${mm(long)}x${mm(short)}`;
}
