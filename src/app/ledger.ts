import type { Route } from '../graph/route.ts';
import type { Solved } from '../graph/solution.ts';
import { words } from '../words/index.ts';
import { nodeName, segmentName } from './places.ts';
import { capitalized } from './wording.ts';

const says = words.panels.ledger;

/** One use of the fan's pressure. */
export interface LedgerEntry {
  readonly id: string;
  /** Where: "Duct 2". */
  readonly name: string;
  /** What: "friction", or the fitting in trade words. */
  readonly what: string;
  /** Pa; below zero where a junction or a booster fan gives pressure back. */
  readonly loss: number;
  readonly share: number;
  /** What `loss` is called where it is derived; absent where nothing says how it came about. */
  readonly figure?: 'friction loss' | 'fitting loss' | 'house pressure';
  readonly place: { readonly nodes: readonly string[]; readonly segments: readonly string[] };
}

/**
 * Every duct's friction and every fitting's loss at one speed, and what it takes to draw the air out
 * of a house that stands below outdoors; the largest first.
 */
export function pressureLedger(solved: Solved, route: Route): LedgerEntry[] {
  const entries: LedgerEntry[] = [];
  for (const segment of solved.segments.values())
    entries.push({
      id: segment.id,
      name: capitalized(segmentName(route, segment.id)),
      what: says.friction,
      loss: segment.frictionLoss,
      share: segment.share,
      figure: 'friction loss',
      place: { nodes: [], segments: [segment.id] },
    });
  for (const fitting of solved.fittings) {
    const onSegment = route.segments.has(fitting.at);
    entries.push({
      id: fitting.id,
      name: capitalized(onSegment ? segmentName(route, fitting.at) : nodeName(route, fitting.at)),
      what: fitting.label,
      loss: fitting.loss,
      share: fitting.share,
      figure: 'fitting loss',
      place: onSegment ? { nodes: [], segments: [fitting.at] } : { nodes: [fitting.at], segments: [] },
    });
  }
  if (solved.house) {
    const loss = -solved.house.pressure;
    entries.push({
      id: 'house',
      name: says.house,
      what: says.drawingIn,
      loss,
      share: loss / solved.totalPressure,
      figure: 'house pressure',
      place: { nodes: [], segments: [] },
    });
  }
  for (const booster of solved.boosters)
    entries.push({
      id: `${booster.node}/booster`,
      name: capitalized(nodeName(route, booster.node)),
      what: says.helps(booster.name),
      loss: -booster.pressure,
      share: -booster.pressure / solved.totalPressure,
      place: { nodes: [booster.node], segments: [] },
    });
  return entries.sort((a, b) => b.loss - a.loss);
}
