import { expect, test } from 'vitest';
import { partSources } from '../../../../src/advice/parts/sources.ts';
import { materials } from '../../../../src/hydraulics/catalogue.ts';
import { exampleJob, runThrough } from '../../../support/route-job.ts';

test('every rule behind a parts list is told once, with its source and how far that can be trusted', () => {
  const sources = partSources(exampleJob(), 'roof');
  expect(sources.map(({ what }) => what)).toEqual([
    'Sheet metal pipe with a crimped end',
    'Flexible duct',
    'Hangers',
    'Sealant and tape',
    'Weight of galvanized steel duct',
    'Weight of flexible aluminium duct',
    'Weight of fittings',
  ]);
  for (const { source, sourceKind } of sources) {
    expect(source).toMatch(/\w/);
    expect(['found', 'memory', 'common practice', 'assumption']).toContain(sourceKind);
  }
});

test('the weight of every material of the catalogue has a source', () => {
  for (const { id, name } of materials) {
    const job = runThrough(
      [
        [0, 0, 0],
        [0, 2, 0],
      ],
      { material: id },
    );
    const what = partSources(job, 'scheme-1').map((one) => one.what);
    expect(what).toContain(`Weight of ${name.toLowerCase()} duct`);
  }
});
