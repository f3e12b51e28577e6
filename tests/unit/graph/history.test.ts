import { describe, expect, test } from 'vitest';
import {
  addDimension,
  deleteSelection,
  moveNodes,
  removeDimension,
  replaceFields,
  setDuct,
} from '../../../src/graph/edits/index.ts';
import { commit, redo, redoLabel, startHistory, undo, undoLabel } from '../../../src/graph/history.ts';
import { drawn } from '../../support/drawn.ts';

const moved = (history = startHistory(drawn())) =>
  commit(history, 'Move node', (job) => moveNodes(job, 's1', ['n3'], [0, 1, 0]));

describe('an edit', () => {
  test('that adds a field to an object and changes another one within it goes back and forth', () => {
    const start = startHistory(drawn());
    const history = commit(start, 'Change node', (job) => {
      const node = job.schemes[0]?.nodes[2];
      if (!node) throw new Error('the drawing has three nodes');
      node.bend = { kind: 'smooth' };
      node.at[2] += 1;
      node.role = 'fan';
    });
    expect(undo(history).job).toEqual(start.job);
    expect(JSON.stringify(undo(history).job)).toBe(JSON.stringify(start.job));
    expect(redo(undo(history)).job).toEqual(history.job);
    expect(undo(redo(undo(history))).job).toEqual(start.job);
  });

  test('is one step with its label', () => {
    const history = moved();
    expect(history.past).toHaveLength(1);
    expect(undoLabel(history)).toBe('Move node');
    expect(redoLabel(history)).toBeNull();
  });

  test('leaves the document before it as it was', () => {
    const start = startHistory(drawn());
    moved(start);
    expect(start).toEqual(startHistory(drawn()));
  });

  test('that changes nothing leaves no step', () => {
    const start = startHistory(drawn());
    expect(commit(start, 'Nothing', () => {})).toBe(start);
  });

  test('that puts an equal value in place of a value leaves no step', () => {
    const start = startHistory(drawn());
    const duct = { shape: 'round', diameter: 0.2032 } as const;
    expect(commit(start, 'Same duct', (job) => setDuct(job, 's1', 'all', duct))).toBe(start);
    expect(commit(start, 'Stand still', (job) => moveNodes(job, 's1', ['n3'], [0, 0, 0]))).toBe(start);
  });

  test('that throws changes nothing and says why', () => {
    const start = startHistory(drawn());
    const failing = () =>
      commit(start, 'Half done', (job) => {
        job.title = 'half done';
        moveNodes(job, 's1', ['n9'], [0, 1, 0]);
      });
    expect(failing).toThrow('no node "n9"');
    expect(start.job.title).toBe('Invented kitchen');
  });
});

describe('undo', () => {
  test('gives back the first document', () => {
    const first = drawn();
    const back = undo(moved(startHistory(first)));
    expect(back.job).toEqual(first);
    expect(redoLabel(back)).toBe('Move node');
  });

  test('gives back the same objects for all that the edit did not touch', () => {
    const first = drawn();
    const back = undo(moved(startHistory(first)));
    expect(back.job.hoods).toBe(first.hoods);
    expect(back.job.schemes[0]?.segments[0]).toBe(first.schemes[0]?.segments[0]);
  });

  test('puts a field that was taken off back in its place, so that a file is written as before', () => {
    const first = drawn();
    const edited = commit(startHistory(first), 'Take a role off', (job) => {
      const [hood, turn] = job.schemes[0]?.nodes ?? [];
      if (turn) turn.at = [1, 0, 2.5];
      if (hood) Reflect.deleteProperty(hood, 'role');
    });
    expect(JSON.stringify(undo(edited).job)).toBe(JSON.stringify(first));
    expect(undo(edited).job.schemes[0]?.nodes[0]).toBe(first.schemes[0]?.nodes[0]);
  });

  test('puts a field of the job itself back in its place', () => {
    const first = drawn();
    const edited = commit(startHistory(first), 'Take the title off', (job) => {
      Reflect.deleteProperty(job, 'title');
    });
    expect(undo(edited).job).toBe(first);
  });

  test('with nothing to take back gives the same history', () => {
    const start = startHistory(drawn());
    expect(undo(start)).toBe(start);
  });
});

describe('redo', () => {
  test('makes the edit again', () => {
    const history = moved();
    expect(redo(undo(history))).toEqual(history);
  });

  test('with nothing taken back gives the same history', () => {
    const history = moved();
    expect(redo(history)).toBe(history);
  });

  test('is forgotten once another edit is made', () => {
    const history = commit(undo(moved()), 'Rename', (job) => replaceFields(job, { title: 'Renamed' }));
    expect(redoLabel(history)).toBeNull();
    expect(undoLabel(history)).toBe('Rename');
  });
});

test('an edit that takes a list away and changes what stood beside it is undone and redone exactly', () => {
  const first = commit(startHistory(drawn()), 'add dimension', (job) => {
    addDimension(job, 's1', {
      sheet: 'floor',
      along: 'u',
      from: { node: 'n2' },
      to: { node: 'n3' },
      offset: 1,
    });
  });
  const both = commit(first, 'delete', (job) => {
    removeDimension(job, 's1', 'dim1');
    deleteSelection(job, 's1', { nodes: ['n3'], segments: ['d1'] });
  });
  expect(JSON.stringify(undo(both).job)).toBe(JSON.stringify(first.job));
  expect(JSON.stringify(redo(undo(both)).job)).toBe(JSON.stringify(both.job));
});
