import type { Candidate, ProposalKind } from '../proposals/candidate.ts';

/** What of a route a change is about; two changes of the same at the same place would undo each other. */
const about: Readonly<Record<ProposalKind, 'size' | 'make' | 'turn' | 'exit' | 'wrap' | 'house'>> = {
  'larger diameter': 'size',
  'no reducer': 'size',
  'smooth duct': 'make',
  'stretched duct': 'make',
  'gentler bend': 'turn',
  'two 45s': 'turn',
  'moved turn': 'turn',
  'fewer turns': 'turn',
  'better cap': 'exit',
  'other cap': 'exit',
  insulation: 'wrap',
  'make-up air': 'house',
};

type Change = Pick<Candidate, 'kind' | 'nodes' | 'segments'>;

/** True where one change leaves the other what it is: they are about different things, or different places. */
export function compatible(a: Change, b: Change): boolean {
  if (about[a.kind] !== about[b.kind]) return true;
  if (about[a.kind] === 'house' || a.kind === 'larger diameter' || b.kind === 'larger diameter') return false;
  const meet = (one: readonly string[], other: readonly string[]) => one.some((id) => other.includes(id));
  return about[a.kind] === 'turn'
    ? !meet(a.nodes, b.nodes)
    : !meet(a.nodes, b.nodes) && !meet(a.segments, b.segments);
}
