import { describe, expect, test } from 'vitest';
import type { Vec3 } from '../../../src/graph/document.ts';
import * as edits from '../../../src/graph/edits/index.ts';
import { drawn, edited } from '../../support/drawn.ts';

const beam = { name: ' beam ', kind: 'beam' as const, min: [1, 0, 3] as Vec3, max: [0, 2, 2] as Vec3 };
const picture = {
  sheet: 'floor' as const,
  image: 'data:image/png;base64,AA==',
  at: [1, 1] as [number, number],
  scale: 0.01,
  opacity: 0.5,
};

describe('blocks of the room', () => {
  test('have their corners put in order whichever were given', () => {
    const { job, given } = edited((draft) => edits.addBlock(draft, beam));
    expect(given).toBe('b1');
    expect(job.blocks).toEqual([{ id: 'b1', name: 'beam', kind: 'beam', min: [0, 0, 2], max: [1, 2, 3] }]);
  });

  test('have room in them', () => {
    const flat = edited((draft) => edits.addBlock(draft, { ...beam, max: [1, 2, 2] }));
    expect(flat.given).toBeNull();
    expect(flat.job).toEqual(drawn());
    const endless = edited((draft) =>
      edits.addBlock(draft, { ...beam, max: [Number.POSITIVE_INFINITY, 2, 2] }),
    );
    expect(endless.given).toBeNull();
  });

  test('are repeated a step from each other, the first one step from the block', () => {
    const { job, given } = edited((draft) => {
      const id = edits.addBlock(draft, beam) as string;
      return edits.repeatBlock(draft, id, 2, [0, 0.4, 0]);
    });
    expect(given).toEqual(['b2', 'b3']);
    expect(job.blocks.map(({ kind, min }) => [kind, min])).toEqual([
      ['beam', [0, 0, 2]],
      ['beam', [0, 0.4, 2]],
      ['beam', [0, 0.8, 2]],
    ]);
  });

  test('move, take another size, name and kind, and go', () => {
    const { job } = edited((draft) => {
      const id = edits.addBlock(draft, beam) as string;
      edits.moveBlock(draft, id, [1, 1, 0]);
      edits.renameBlock(draft, id, 'steel beam');
      edits.setBlockKind(draft, id, 'obstacle');
    });
    expect(job.blocks).toEqual([
      { id: 'b1', name: 'steel beam', kind: 'obstacle', min: [1, 1, 2], max: [2, 3, 3] },
    ]);
    const resized = edited((draft) => edits.resizeBlock(draft, 'b1', [5, 5, 5], [4, 4, 4]), job);
    expect(resized.job.blocks[0]).toMatchObject({ min: [4, 4, 4], max: [5, 5, 5] });
    expect(edited((draft) => edits.resizeBlock(draft, 'b1', [5, 5, 5], [5, 4, 4]), job).given).toBe(false);
    expect(edited((draft) => edits.removeBlock(draft, 'b1'), job).job.blocks).toEqual([]);
  });

  test('that are not there throw', () => {
    expect(() => edited((draft) => edits.moveBlock(draft, 'b9', [0, 0, 0]))).toThrow('no block "b9"');
  });
});

test('exit faces come, move, take another size and name, and go', () => {
  const wall = {
    name: 'north wall',
    kind: 'wall' as const,
    min: [0, 4, 0] as Vec3,
    max: [4, 4.15, 3] as Vec3,
  };
  const { job } = edited((draft) => {
    const id = edits.addExit(draft, wall) as string;
    edits.moveExit(draft, id, [0, 1, 0]);
    edits.renameExit(draft, id, 'garden wall');
  });
  expect(job.exits).toEqual([
    { id: 'x1', name: 'garden wall', kind: 'wall', min: [0, 5, 0], max: [4, 5.15, 3] },
  ]);
  expect(edited((draft) => edits.resizeExit(draft, 'x1', [0, 5, 0], [4, 5, 3]), job).given).toBe(false);
  expect(edited((draft) => edits.removeExit(draft, 'x1'), job).job.exits).toEqual([]);
});

test('a clearance is from 0 to 1 m, or the usual one', () => {
  const { job } = edited((draft) => edits.setClearance(draft, 0.05));
  expect(job.clearance).toBe(0.05);
  expect(edited((draft) => edits.setClearance(draft, -1), job).given).toBe(false);
  expect(edited((draft) => edits.setClearance(draft, null), job).job).toEqual(drawn());
});

describe('underlays', () => {
  test('hold their picture themselves', () => {
    expect(edited((draft) => edits.addUnderlay(draft, picture)).given).toBe('u1');
    const elsewhere = edited((draft) => edits.addUnderlay(draft, { ...picture, image: 'plan.png' }));
    expect(elsewhere.given).toBeNull();
    expect(elsewhere.job).toEqual(drawn());
  });

  test('refuse a change that makes no underlay, and go', () => {
    const { job } = edited((draft) => edits.addUnderlay(draft, picture));
    const changed = edited((draft) => edits.changeUnderlay(draft, 'u1', { opacity: 0.2, locked: true }), job);
    expect(changed.job.underlays[0]).toMatchObject({ opacity: 0.2, locked: true, scale: 0.01 });
    expect(edited((draft) => edits.changeUnderlay(draft, 'u1', { scale: 0 }), job).given).toBe(false);
    expect(edited((draft) => edits.removeUnderlay(draft, 'u1'), job).job.underlays).toEqual([]);
  });

  test('take their scale from two places and the length between them, the first place staying put', () => {
    const { job } = edited((draft) => edits.addUnderlay(draft, picture));
    const { job: scaled } = edited((draft) => edits.scaleUnderlay(draft, 'u1', [2, 1], [2, 3], 4), job);
    expect(scaled.underlays[0]).toMatchObject({ scale: 0.02, at: [0, 1] });
    expect(edited((draft) => edits.scaleUnderlay(draft, 'u1', [2, 1], [2, 1], 4), job).given).toBe(false);
  });
});

describe('notes on a sheet', () => {
  const note = { sheet: 'floor' as const, at: [1, 2] as [number, number], text: 'gas pipe here' };

  test('say something, can be changed, and go with their list', () => {
    const { job, given } = edited((draft) => edits.addNote(draft, note));
    expect(given).toBe('note1');
    const changed = edited((draft) => edits.changeNote(draft, 'note1', { text: 'water pipe' }), job);
    expect(changed.job.sheetNotes).toEqual([{ id: 'note1', ...note, text: 'water pipe' }]);
    expect(edited((draft) => edits.changeNote(draft, 'note1', { text: ' ' }), job).given).toBe(false);
    expect(edited((draft) => edits.addNote(draft, { ...note, text: '' })).given).toBeNull();
    expect(edited((draft) => edits.removeNote(draft, 'note1'), job).job).toEqual(drawn());
  });
});

describe('dimensions', () => {
  const between = (from: string, to: string) =>
    ({ sheet: 'floor', along: 'v', from: { node: from }, to: { node: to }, offset: 0.3 }) as const;

  test('need two ends, and nodes that are there', () => {
    expect(edited((job) => edits.addDimension(job, 's1', between('n2', 'n3'))).given).toBe('dim1');
    expect(edited((job) => edits.addDimension(job, 's1', between('n2', 'n2'))).given).toBeNull();
    expect(() => edited((job) => edits.addDimension(job, 's1', between('n2', 'n9')))).toThrow('no node "n9"');
  });

  test('go with the node that they measure to', () => {
    const { scheme } = edited((job) => {
      edits.addDimension(job, 's1', between('n2', 'n3'));
      edits.addDimension(job, 's1', between('n1', 'n4'));
      edits.deleteSelection(job, 's1', { nodes: ['n3'], segments: [] });
    });
    expect(scheme.dimensions?.map(({ id }) => id)).toEqual(['dim2']);
  });

  test('follow a node into the one that it is merged with', () => {
    const { scheme } = edited((job) => {
      edits.addDimension(job, 's1', between('n2', 'n4'));
      edits.addDimension(job, 's1', between('n3', 'n4'));
      edits.mergeNodes(job, 's1', 'n3', 'n4');
    });
    expect(scheme.dimensions).toEqual([{ id: 'dim1', ...between('n2', 'n4') }]);
  });

  test('move and go', () => {
    const { job } = edited((draft) => edits.addDimension(draft, 's1', between('n2', 'n3')));
    const moved = edited((draft) => edits.moveDimension(draft, 's1', 'dim1', -1), job);
    expect(moved.scheme.dimensions?.[0]?.offset).toBe(-1);
    expect(edited((draft) => edits.removeDimension(draft, 's1', 'dim1'), job).job).toEqual(drawn());
  });
});
