import file from '#shared/weights.json' with { type: 'json' };
import { perimeter } from '../../hydraulics/section.ts';
import type { Section, SourceKind } from '../../hydraulics/types.ts';

interface WeightRow {
  /** m, by the diameter of round duct of the same girth, m. */
  readonly thickness: readonly (readonly [number, number])[];
  readonly density: number;
  readonly seams: number;
  readonly source: string;
  readonly sourceKind: SourceKind;
}

const rows = file.materials as unknown as Readonly<Record<string, WeightRow>>;

/** Where the weight of a material comes from; undefined where nobody has said it. */
export function weightSource(material: string): Pick<WeightRow, 'source' | 'sourceKind'> | undefined {
  return rows[material];
}

/**
 * What duct weighs: girth, wall thickness and density, and the share of seams and laps, kg. Undefined for a material
 * without a row in `shared/weights.json`, whose rows say their sources.
 *
 * @param length m of duct
 */
export function ductWeight(material: string, section: Section, length: number): number | undefined {
  const row = rows[material];
  if (!row) return undefined;
  const girth = perimeter(section);
  return girth * thicknessAt(row.thickness, girth / Math.PI) * row.density * (1 + row.seams) * length;
}

/**
 * What a fitting of a material weighs, kg: as the duct along its centre line and a collar at each end, a tenth more for
 * gores and seams (common practice).
 *
 * @param length along the centre line, m
 * @param collars how many ends it has
 */
export function fittingWeight(
  material: string,
  section: Section,
  length: number,
  collars = 2,
): number | undefined {
  const { collar, gores } = file.fittings;
  const plain = ductWeight(material, section, length + collars * collar);
  return plain === undefined ? undefined : plain * (1 + gores);
}

/** What wrap of an area and thickness weighs, kg (common practice). */
export function wrapWeight(area: number, thickness: number): number {
  return area * thickness * file.wrap.density;
}

function thicknessAt(curve: WeightRow['thickness'], diameter: number): number {
  let [x0, y0] = curve[0] ?? [0, 0];
  if (diameter <= x0) return y0;
  for (const [x, y] of curve.slice(1)) {
    if (diameter <= x) return y0 + ((y - y0) * (diameter - x0)) / (x - x0);
    [x0, y0] = [x, y];
  }
  return y0;
}
