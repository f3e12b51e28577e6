import { readJob } from '../../files/read.ts';
import type { Job } from '../../graph/document.ts';

/** Templates that come with the program, in the order in which they are listed. */
const texts = {
  wall: () => import('../../../fixtures/templates/wall.gentlebend.json?raw'),
  side: () => import('../../../fixtures/templates/side.gentlebend.json?raw'),
  island: () => import('../../../fixtures/templates/island.gentlebend.json?raw'),
  downdraught: () => import('../../../fixtures/templates/downdraught.gentlebend.json?raw'),
};

export type SuppliedTemplate = keyof typeof texts;

export const supplied = Object.keys(texts) as readonly SuppliedTemplate[];

/** The job that a template of the program begins with. */
export async function suppliedJob(id: SuppliedTemplate): Promise<Job> {
  const read = readJob((await texts[id]()).default);
  if (!read.ok) throw new Error(`the template ${id} can be read`);
  return read.job;
}
