import type { Draft } from 'immer';
import type { InlinePart, Job, Scheme, Vec3 } from '../../graph/document.ts';
import { plainCopy } from '../../graph/edits/find.ts';
import { addInline, addScheme, extendRun, findScheme, setCap } from '../../graph/edits/index.ts';
import { schemeOf } from '../../graph/infer.ts';
import { distance } from '../../graph/vector.ts';
import { words } from '../../words/index.ts';
import { usualCap } from './losses.ts';
import type { RouteQuestion } from './question.ts';

const says = words.search.scheme;

/** A route as it would be drawn: from the collar, turn by turn, to the end beyond an exit face. */
export interface RouteLine {
  readonly exit: string;
  readonly points: readonly Vec3[];
}

/** Name of the scheme that a route becomes. */
export function nameOf(job: Job, line: RouteLine): string {
  const face = job.exits.find(({ id }) => id === line.exit);
  const name = face?.name.trim();
  return says.found(name || says[face?.kind === 'roof' ? 'roof' : 'wall']);
}

/**
 * Draws a route as a scheme of its own and gives the scheme's id: the hoods of the scheme that was asked
 * about, duct and bends as asked, the usual cap of the exit's kind, and the parts in line that stood on
 * the leg from the collar, as far as the new leg has room for them.
 */
export function drawRoute(job: Draft<Job>, question: RouteQuestion, line: RouteLine): string {
  const parts = partsAtCollar(schemeOf(job as Job, question.schemeId), question.hood);
  const id = addScheme(job, question.schemeId, nameOf(job as Job, line));
  const { duct, material, bend } = question;
  findScheme(job, id).defaults = { duct: { ...duct }, material, bend: { ...bend } };
  let from = question.hood;
  let first: string | null = null;
  for (const at of line.points.slice(1)) {
    const drawn = extendRun(job, id, from, at);
    if (!drawn) continue;
    from = drawn.node;
    first ??= drawn.segment;
  }
  const face = job.exits.find((each) => each.id === line.exit);
  setCap(job, id, from, usualCap[face?.kind ?? 'wall']);
  const [collar, turn] = line.points;
  const room = collar && turn ? distance(collar, turn) : 0;
  for (const part of parts) if (first !== null && part.at <= room) addInline(job, id, first, part);
  return id;
}

/** Parts in line on the leg at a hood, as far from the collar as they stand. */
function partsAtCollar(scheme: Scheme, hood: string): InlinePart[] {
  const leg = scheme.segments.find(({ from, to }) => from === hood || to === hood);
  const ends = [leg?.from, leg?.to].map((id) => scheme.nodes.find((node) => node.id === id)?.at);
  const [from, to] = ends;
  if (!leg || !from || !to) return [];
  const length = distance(from, to);
  return (leg.fittings ?? []).map((part) => ({
    ...plainCopy(part),
    at: leg.from === hood ? part.at : Math.max(0, length - part.at),
  }));
}
