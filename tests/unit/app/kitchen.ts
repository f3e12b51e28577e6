import { readFileSync } from 'node:fs';
import { readJob } from '../../../src/files/read.ts';
import type { Job } from '../../../src/graph/document.ts';

/** The example job of the program, as a fresh document. */
export function exampleJob(): Job {
  const read = readJob(readFileSync('fixtures/example.gentlebend.json', 'utf8'));
  if (!read.ok) throw new Error(read.problems[0]?.message);
  return read.job;
}

/** The first turn of the first scheme, and a recipe that moves it by `dz` metres. */
export function firstTurn(job: Job): { id: string; moved: (dz: number) => (job: Job) => void } {
  const node = job.schemes[0]?.nodes.find((n) => n.role === 'turn');
  if (!node) throw new Error('the example has a turn');
  const moved = (dz: number) => (draft: Job) => {
    const turn = draft.schemes[0]?.nodes.find((n) => n.id === node.id);
    if (turn) turn.at[2] += dz;
  };
  return { id: node.id, moved };
}
