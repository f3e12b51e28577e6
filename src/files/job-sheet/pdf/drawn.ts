import type { Job } from '../../../graph/document.ts';
import type { Finding, Route } from '../../../graph/route.ts';
import type { SchemeSolution } from '../../../graph/solution.ts';

/** What the drawings and charts of a scheme are made from. */
export interface Drawn {
  readonly job: Job;
  readonly solution: SchemeSolution;
  readonly route: Route;
  /** The number of a leg in the route schedule, by segment id. */
  readonly numbers: ReadonlyMap<string, number>;
  /** Findings that have a place on the drawings, with the letter that stands for each there and in the text. */
  readonly lettered: readonly { readonly letter: string; readonly finding: Finding }[];
}

export function drawnOf(job: Job, solution: SchemeSolution): Drawn {
  const { route, findings } = solution;
  const placed = findings.filter(
    ({ severity, nodes, segments }) =>
      severity !== 'note' &&
      (nodes.some((id) => route.nodes.has(id)) || segments.some((id) => route.segments.has(id))),
  );
  return {
    job,
    solution,
    route,
    numbers: new Map(route.order.map((id, i) => [id, i + 1])),
    lettered: placed.map((finding, i) => ({ letter: letterOf(i), finding })),
  };
}

/** A to Z, then AA, AB and on. */
function letterOf(index: number): string {
  const last = String.fromCharCode(65 + (index % 26));
  return index < 26 ? last : `${letterOf(Math.floor(index / 26) - 1)}${last}`;
}
