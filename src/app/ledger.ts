import type { Route } from '../graph/route.ts';
import type { Solved } from '../graph/solution.ts';
import { nodeName, segmentName } from './places.ts';
import { capitalized } from './wording.ts';

/** One use of the fan's pressure. */
export interface LedgerEntry {
  readonly id: string;
  /** Where: "Duct 2". */
  readonly name: string;
  /** What: "friction", or the fitting in trade words. */
  readonly what: string;
  /** Pa; below zero where a junction gives pressure back. */
  readonly loss: number;
  readonly share: number;
  readonly place: { readonly nodes: readonly string[]; readonly segments: readonly string[] };
}

/** Every duct's friction and every fitting's loss at one speed, the largest first. */
export function pressureLedger(solved: Solved, route: Route): LedgerEntry[] {
  const entries: LedgerEntry[] = [];
  for (const segment of solved.segments.values())
    entries.push({
      id: segment.id,
      name: capitalized(segmentName(route, segment.id)),
      what: 'friction',
      loss: segment.frictionLoss,
      share: segment.share,
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
      place: onSegment ? { nodes: [], segments: [fitting.at] } : { nodes: [fitting.at], segments: [] },
    });
  }
  return entries.sort((a, b) => b.loss - a.loss);
}
