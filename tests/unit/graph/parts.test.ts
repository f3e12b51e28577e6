import { expect, test } from 'vitest';
import * as edits from '../../../src/graph/edits/index.ts';
import { edited, nodeOf, segmentOf } from '../../support/drawn.ts';

test('insulation goes on the legs that were named, and none at all takes it off', () => {
  const wrapped = edited((job) => edits.setInsulation(job, 's1', ['d2'], 0.05));
  expect(segmentOf(wrapped.scheme, 'd2')?.insulation).toBe(0.05);
  expect(segmentOf(wrapped.scheme, 'd1')?.insulation).toBeUndefined();
  const bare = edited((job) => {
    edits.setInsulation(job, 's1', ['d2'], 0.05);
    edits.setInsulation(job, 's1', ['d2'], 0);
  });
  expect(segmentOf(bare.scheme, 'd2')).not.toHaveProperty('insulation');
});

test('a chosen transition stands at its node until it is left to the program again', () => {
  const choice = { kind: 'conical', angle: 30 } as const;
  const chosen = edited((job) => edits.setTransition(job, 's1', 'n2', choice));
  expect(nodeOf(chosen.scheme, 'n2')?.transition).toEqual(choice);
  const left = edited((job) => {
    edits.setTransition(job, 's1', 'n2', choice);
    edits.setTransition(job, 's1', 'n2', null);
  });
  expect(nodeOf(left.scheme, 'n2')).not.toHaveProperty('transition');
});
