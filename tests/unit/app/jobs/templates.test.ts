import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { supplied, suppliedJob } from '../../../../src/app/jobs/supplied.ts';
import { readJob } from '../../../../src/files/read.ts';
import { writeJob } from '../../../../src/files/write.ts';
import { solveScheme } from '../../../../src/graph/solve.ts';
import { words } from '../../../../src/words/index.ts';

describe.each(supplied)('the template %s', (id) => {
  const text = readFileSync(`fixtures/templates/${id}.gentlebend.json`, 'utf8');

  it('is a file as this program writes it, with nothing to repair', () => {
    const read = readJob(text, { repair: false });
    expect(read.ok && [read.repairs, writeJob(read.job)]).toEqual([[], text]);
  });

  it('delivers air at every speed and has no dangerous finding', async () => {
    const job = await suppliedJob(id);
    const { speeds, findings } = solveScheme(job, job.schemes[0]?.id ?? '');
    for (const { outcome } of speeds) expect(outcome.solved).toBe(true);
    expect(findings.filter(({ severity }) => severity === 'danger')).toEqual([]);
  });

  it('says that it is invented, and is listed by its own title', async () => {
    const job = await suppliedJob(id);
    expect(job.notes).toMatch(/invented/);
    for (const { name } of job.hoods) expect(name).toMatch(/^Invented/);
    expect(words.jobs.template.supplied[id].title).toBe(job.title);
  });
});
