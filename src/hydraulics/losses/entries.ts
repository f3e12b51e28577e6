import { findEntry, need } from '../catalogue.ts';
import { area } from '../section.ts';
import type { LocalLoss, Section } from '../types.ts';
import { lookUp } from './table.ts';

export interface EntryQuery {
  /** Catalogue id. */
  readonly kind: string;
  readonly section: Section;
  /** Wall thickness and how far the duct stands out of the wall, over the duct's diameter; 0 where absent. */
  readonly thickness?: number;
  readonly projection?: number;
  /** Lip radius of a bellmouth over the duct's diameter; 0 where absent. */
  readonly lipRadius?: number;
}

/**
 * Loss where air enters a duct from a room without a hood, on the duct's own section. A hood's own collar is
 * in the rating of its fan and is not charged again. Refuses a kind that the catalogue does not have.
 */
export function entryLoss(query: EntryQuery): LocalLoss {
  const row = need(findEntry(query.kind), 'entries', query.kind);
  const at = { 't/D': query.thickness ?? 0, 'L/D': query.projection ?? 0, 'r/D': query.lipRadius ?? 0 };
  const { value, notes } = lookUp(row.table, at);
  return {
    parts: [{ kind: 'local', c: value, area: area(query.section) }],
    c: value,
    section: query.section,
    includesArcFriction: row.includesArcFriction,
    label: row.name,
    provenance: { row: `entries/${row.id}`, source: row.source, sourceKind: row.sourceKind, notes },
  };
}
