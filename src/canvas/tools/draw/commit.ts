import type { Draft } from 'immer';
import type { Job } from '../../../graph/document.ts';
import {
  addNode,
  closeToNode,
  extendRun,
  findScheme,
  insertNode,
  setCap,
} from '../../../graph/edits/index.ts';
import type { Anchor, Target } from './run.ts';

/**
 * Draws one leg: splits the segment that it starts or ends on, makes the node that it starts or ends
 * in where there is none. Gives the id of the node that it ends in; `null` where the two ends are one
 * place or are joined already.
 */
export function drawLeg(job: Draft<Job>, schemeId: string, anchor: Anchor, target: Target): string | null {
  const from = nodeOf(job, schemeId, anchor);
  if (target.kind !== 'place') {
    const to = nodeOf(job, schemeId, target);
    return closeToNode(job, schemeId, from, to) === null ? null : to;
  }
  const leg = extendRun(job, schemeId, from, target.at);
  if (leg && target.cap && !capped(job, schemeId, leg.node)) setCap(job, schemeId, leg.node, target.cap);
  return leg?.node ?? null;
}

/** A cap that ended the run before has moved on to its new end and stays what it is. */
function capped(job: Draft<Job>, schemeId: string, id: string): boolean {
  return findScheme(job, schemeId).nodes.some((node) => node.id === id && node.role === 'cap');
}

function nodeOf(job: Draft<Job>, schemeId: string, end: Anchor | Exclude<Target, { kind: 'place' }>): string {
  switch (end.kind) {
    case 'node':
      return end.id;
    case 'segment':
      return insertNode(job, schemeId, end.id, end.at).node;
    case 'place':
      return addNode(job, schemeId, end.at);
  }
}
