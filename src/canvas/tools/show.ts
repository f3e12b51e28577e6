import type { Snap } from '../../graph/snap.ts';
import type { ActiveShape } from '../sheet-handle.ts';

/** The mark (not where `bare`), the reason and the guides of a snap; nothing where the pointer is free. */
export function snapShapes({ point, reason, guides }: Snap, bare = false): ActiveShape[] {
  if (reason === '') return [];
  return [
    ...guides.map(([from, to]): ActiveShape => ({ kind: 'guide', from, to })),
    { kind: 'snap', at: point, reason, bare },
  ];
}
