import { words } from '../../words/index.ts';
import { type CapRow, capTables, findCap, findInline, need } from '../catalogue.ts';
import { area } from '../section.ts';
import type { LocalLoss, LossPart, Section } from '../types.ts';
import { bendLoss } from './bends.ts';
import { lookUp, tidy } from './table.ts';
import { areaChange } from './transitions.ts';

const says = words.losses.caps;

export interface CapQuery {
  /** Catalogue id. */
  readonly cap: string;
  /** The duct that the cap stands on. */
  readonly section: Section;
  /** Free opening of this very cap, m2, where it differs from its row. */
  readonly opening?: number;
}

interface Piece {
  readonly label: string;
  readonly part: LossPart;
  /** C at full turbulence on the part's own area. */
  readonly c: number;
  readonly area: number;
  readonly notes: readonly string[];
}

/** Openings closer to the duct's area than this, relatively, are the duct's area. */
const SAME_AREA = 1e-6;

/** A duct that ends in the open: all of its velocity pressure leaves, C = 1. Source: all handbooks. */
export function openEnd(section: Section): LocalLoss {
  return capLoss({ cap: 'open', section });
}

/**
 * Loss of a cap, built up from its parts in the order in which the air meets them: contraction into the
 * opening, turn, cover, screen, flap, and the velocity pressure that leaves through the opening. `c` is their
 * sum referred to the duct, the flap held fully open by the air; the flap's opening pressure comes on top.
 * Refuses a cap that the catalogue does not have and an opening that is not above zero.
 */
export function capLoss({ cap, section, opening }: CapQuery): LocalLoss {
  const row = need(findCap(cap), 'caps', cap);
  const duct = area(section);
  const free = opening ?? row.openingRatio * duct;
  if (!(free > 0)) throw new RangeError(`a cap's opening must be above 0: ${free}`);
  const pieces = build(row, section, Math.abs(free / duct - 1) < SAME_AREA ? duct : free);
  const notes = pieces.flatMap((piece) => piece.notes);
  if (free !== duct && row.id !== 'open') {
    const told = opening === undefined ? says.usualOpening : says.givenOpening;
    notes.unshift(told(tidy((100 * free) / duct)));
  }
  return {
    parts: pieces.map((piece) => piece.part),
    c: pieces.reduce((sum, piece) => sum + piece.c * (duct / piece.area) ** 2, 0),
    section,
    includesArcFriction: row.includesArcFriction,
    label: row.name,
    provenance: {
      row: `caps/${row.id}`,
      source: row.source,
      sourceKind: opening !== undefined && row.sourceKind === 'found' ? 'assumption' : row.sourceKind,
      notes,
    },
    buildUp: pieces.map((piece) => piece.label),
  };
}

function build(row: CapRow, section: Section, free: number): Piece[] {
  const pieces: Piece[] = [];
  const add = (label: string, c: number, notes: readonly string[] = []) =>
    pieces.push({ label, part: { kind: 'local', c, area: free }, c, area: free, notes });
  pieces.push(...openingChange(section, free));
  if (row.turn) {
    if ('c' in row.turn) add(says.turnInHood, row.turn.c);
    else {
      const bend = bendLoss({
        kind: row.turn.bend,
        section,
        angle: row.turn.angle,
        radiusRatio: row.turn.radiusRatio,
      });
      add(bend.label, bend.c, bend.provenance.notes);
    }
  }
  if (row.weatherCap) {
    const cover = lookUp(capTables.weatherCap.table, { 'H/D': row.weatherCap.height });
    add(says.cover(tidy(row.weatherCap.height)), cover.value, cover.notes);
  }
  if (row.screen) {
    const screen = screenLoss(row.screen.freeArea);
    add(says.screen(tidy(100 * row.screen.freeArea)), screen.value, screen.notes);
  }
  if (row.flap)
    pieces.push({
      label: says.flap,
      part: { kind: 'flap', openingPressure: row.flap.openingPressure, c: row.flap.c, area: free },
      c: row.flap.c,
      area: free,
      notes: [says.holdsBack(tidy(row.flap.openingPressure))],
    });
  add(says.leaves, 1);
  return pieces;
}

/** The step from the duct into a smaller opening, or out into a larger one. */
function openingChange(section: Section, free: number): Piece[] {
  const duct = area(section);
  if (free === duct) return [];
  const { c, notes } = areaChange(duct, free, 180);
  const smaller = Math.min(free, duct);
  const label = free < duct ? says.contraction : says.expansion;
  return [{ label, part: { kind: 'local', c, area: smaller }, c, area: smaller, notes }];
}

/** Loss of a wire screen by its free-area ratio, from the catalogue's screen. */
function screenLoss(freeArea: number) {
  const { loss } = need(findInline('screen'), 'parts in line', 'screen');
  if (loss.kind !== 'free area') throw new RangeError('the catalogue has no table for screens');
  return lookUp(loss.table, { 'free area': freeArea });
}
