import { words } from '../../words/index.ts';
import { findMaterial, need } from '../catalogue.ts';
import { hydraulicDiameter } from '../section.ts';
import type { Provenance, Section } from '../types.ts';
import { tidy } from './table.ts';

const says = words.losses.materials;

const INCH = 0.0254;

export interface Roughness {
  /** Absolute, m. */
  readonly roughness: number;
  /** Multiplies the friction of the duct: 1 but for flexible duct left slack. */
  readonly multiplier: number;
  readonly provenance: Provenance;
}

/**
 * Roughness of a material, and for flexible duct the friction multiplier
 * `1 + 0.58 r exp(-0.126 D)`, r the compression in percent, D the hydraulic diameter in inches (from
 * memory: ASHRAE Fundamentals, Duct Design). `stretch` is installed over fully stretched length, above 0 to 1.
 * Refuses a material that the catalogue does not have and a stretch outside that range.
 */
export function roughnessOf(materialId: string, section: Section, stretch = 1): Roughness {
  const row = need(findMaterial(materialId), 'materials', materialId);
  if (!(stretch > 0 && stretch <= 1))
    throw new RangeError(`stretch must be above 0 and at most 1: ${stretch}`);
  const { compression } = row;
  const slack = 1 - stretch;
  const found = { row: `materials/${row.id}`, source: row.source, sourceKind: row.sourceKind };
  if (compression === undefined || slack === 0) {
    const notes = slack > 0 ? [says.notCompressed(row.name)] : [];
    return { roughness: row.roughness, multiplier: 1, provenance: { ...found, notes } };
  }
  const { base, slope, decay, testedTo } = compression;
  const inches = hydraulicDiameter(section) / INCH;
  const multiplier = base + slope * (100 * slack) * Math.exp(-decay * inches);
  const notes = [says.slack(tidy(100 * slack), tidy(multiplier), compression.formula, compression.source)];
  if (slack > testedTo) notes.push(says.beyondKnown(tidy(100 * testedTo)));
  return {
    roughness: row.roughness,
    multiplier,
    provenance: {
      row: found.row,
      source: says.bothSources(row.source, compression.source),
      sourceKind: compression.sourceKind,
      notes,
    },
  };
}
