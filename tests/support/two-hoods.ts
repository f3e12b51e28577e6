import type { Hood, Job, Node, Segment } from '../../src/graph/document.ts';
import { jobOf } from './route-job.ts';

/** Two like hoods whose ducts meet in a tee and go on to one open cap; `second` leaves the other hood out. */
export function twoHoods(second = true): Job {
  const nodes: Node[] = [
    { id: 'a', at: [0, 0, 2], role: 'hood', hood: 'hood-1' },
    { id: 'j', at: [2, 0, 2], role: 'turn' },
    { id: 'x', at: [5, 0, 2], role: 'cap', cap: 'open' },
  ];
  const segments: Segment[] = [
    { id: 'da', from: 'a', to: 'j' },
    { id: 'out', from: 'j', to: 'x' },
  ];
  if (second) {
    nodes.push({ id: 'b', at: [2, -2, 2], role: 'hood', hood: 'hood-2' });
    segments.push({ id: 'db', from: 'b', to: 'j' });
  }
  const job = jobOf(nodes, segments);
  const [hood] = job.hoods as [Hood];
  return { ...job, hoods: [hood, { ...hood, id: 'hood-2', name: 'The other hood' }] };
}
