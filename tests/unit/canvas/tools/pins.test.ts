import { describe, expect, it } from 'vitest';
import { only } from '../../../../src/canvas/selection.ts';
import { dimensionShape } from '../../../../src/drawing/dimension-lines.ts';
import { moveBlock, removeBlock, resizeBlock } from '../../../../src/graph/edits/index.ts';
import { bentJob, type Driver, drive, furnishedJob } from '../driver.ts';

const dimensions = (driver: Driver) => driver.scheme.dimensions ?? [];
const notes = (driver: Driver) => driver.board.getState().job.sheetNotes ?? [];

describe('the dimension tool', () => {
  it('measures between two nodes along the side that its line is pulled to', () => {
    const driver = drive(bentJob(), { tool: 'dimension' });
    driver.click('floor', 1, 1);
    driver.click('floor', 3, 3);
    driver.click('floor', 2, 4);
    expect(dimensions(driver)).toEqual([
      {
        id: 'dim1',
        sheet: 'floor',
        along: 'u',
        from: { node: expect.any(String) },
        to: { node: 'n4' },
        offset: expect.closeTo(3, 9),
      },
    ]);
    expect(driver.undoSteps()).toEqual(['add dimension']);
  });

  it('goes on as a chain in one line, one undo step for each', () => {
    const driver = drive(bentJob(), { tool: 'dimension' });
    driver.click('floor', 1, 1);
    driver.click('floor', 3, 1);
    driver.click('floor', 2, 0);
    expect(driver.controller.phase).toBe('dimension/chain');
    driver.click('floor', 4, 1.5);
    driver.click('floor', 5, 2);
    driver.key('Enter');
    expect(driver.controller.phase).toBe('dimension/ready');
    const all = dimensions(driver);
    expect(all.map(({ along }) => along)).toEqual(['u', 'u', 'u']);
    expect(all.map(({ offset }) => offset)).toEqual([-1, -1, -1.5].map((n) => expect.closeTo(n, 9)));
    expect(driver.undoSteps()).toHaveLength(3);
  });

  it('keeps to its nodes when they move', () => {
    const driver = drive(furnishedJob());
    driver.drag('floor', [3, 1], [4, 1.5]);
    expect(dimensions(driver)[0]).toMatchObject({ from: { node: 'n2' }, to: { node: 'n3' } });
  });

  it('refuses one place twice', () => {
    const driver = drive(bentJob(), { tool: 'dimension' });
    driver.click('floor', 3, 3);
    driver.click('floor', 3, 3);
    expect(driver.said).toContain('A dimension needs two places.');
    expect(dimensions(driver)).toEqual([]);
  });
});

describe('a dimension', () => {
  it('is pulled farther off, in one undo step', () => {
    const driver = drive(furnishedJob());
    driver.drag('floor', [2, 0.2], [2, -0.5]);
    expect(dimensions(driver)[0]?.offset).toBeCloseTo(-1.5, 9);
    expect(driver.undoSteps()).toEqual(['move dimension']);
  });

  it('along a whole leg is typed into, and the leg gets that length', () => {
    const driver = drive(furnishedJob());
    driver.click('floor', 2, 0.2);
    driver.key('Enter');
    expect(driver.answer('2.5 m')).toBeNull();
    expect(driver.node('n3').at[0]).toBeCloseTo(3.5, 9);
    expect(driver.undoSteps()).toEqual(['set length']);
  });

  it('is deleted by Delete', () => {
    const driver = drive(furnishedJob());
    driver.click('floor', 2, 0.2);
    driver.key('Delete');
    expect(dimensions(driver)).toEqual([]);
  });
});

describe('the length of a leg', () => {
  const open = () => {
    const driver = drive(bentJob(), { selection: only({ kind: 'segment', id: 'd2' }) });
    expect(driver.key('Enter')).toBe(true);
    return driver;
  };

  it('is typed in place after Enter, outright or as a step', () => {
    const driver = open();
    expect(driver.asks.at(-1)).toMatchObject({
      value: '2000 mm',
      label: expect.stringContaining('Length of'),
    });
    expect(driver.answer('+500')).toBeNull();
    expect(driver.board.getState().solution.route.segments.get('d2')?.length).toBeCloseTo(2.5, 9);
    expect(driver.undoSteps()).toEqual(['set length']);
  });

  it('that cannot be read is said, and nothing changes', () => {
    const driver = open();
    const { job } = driver.board.getState();
    expect(driver.answer('six')).toContain('six');
    expect(driver.answer('-3 m')).toEqual(expect.any(String));
    expect(driver.answer('=0')).toEqual(expect.any(String));
    expect(driver.board.getState().job).toBe(job);
  });
});

describe('the note tool', () => {
  it('opens a field and pins what is typed', () => {
    const driver = drive(bentJob(), { tool: 'note' });
    driver.click('floor', 2, 3);
    expect(notes(driver)).toEqual([]);
    expect(driver.answer('Keep clear of the pipe')).toBeNull();
    expect(notes(driver)).toEqual([
      { id: 'note1', sheet: 'floor', at: [2, 3], text: 'Keep clear of the pipe' },
    ]);
    expect(driver.undoSteps()).toEqual(['pin note']);
  });

  it('pins nothing where nothing is typed', () => {
    const driver = drive(bentJob(), { tool: 'note' });
    driver.click('floor', 2, 3);
    expect(driver.answer('  ')).toBeNull();
    expect(driver.undoSteps()).toEqual([]);
  });
});

describe('a note', () => {
  it('is moved by a drag and edited by a double click', () => {
    const driver = drive(furnishedJob());
    driver.drag('floor', [-0.4, 2.95], [0.6, 3.95], { alt: true });
    expect(notes(driver)[0]?.at).toEqual([0.5, 4].map((n) => expect.closeTo(n, 9)));
    driver.doubleClick('floor', 0.6, 3.95);
    expect(driver.asks.at(-1)).toMatchObject({ value: 'Ask the builder', lines: true });
    expect(driver.answer('Asked')).toBeNull();
    expect(notes(driver)[0]?.text).toBe('Asked');
    expect(driver.answer(' ')).toContain('needs words');
    expect(driver.undoSteps()).toEqual(['move note', 'change note']);
  });
});

describe('the measure tool', () => {
  it('says a distance, changes nothing and goes at the next click', () => {
    const driver = drive(bentJob(), { tool: 'measure' });
    const { job } = driver.board.getState();
    driver.click('floor', 1, 1);
    driver.click('floor', 3, 1);
    expect(driver.said.at(-1)).toContain('2000 mm');
    expect(driver.shapes('floor')).toContainEqual(expect.objectContaining({ kind: 'measure' }));
    expect(driver.board.getState().job).toBe(job);
    driver.key('Escape');
    expect(driver.shapes('floor')).toEqual([]);
    expect(driver.board.getState().tool).toBe('measure');
    driver.key('Escape');
    expect(driver.board.getState().tool).toBe('select');
  });

  it('measures by one drag, square with Shift', () => {
    const driver = drive(bentJob(), { tool: 'measure' });
    driver.drag('floor', [4, 4], [5, 4.3], { shift: true });
    expect(driver.said.at(-1)).toBe('1000 mm.');
  });
});

describe('a dimension to the face of a block', () => {
  const drawn = () => {
    const driver = drive(furnishedJob(), { tool: 'dimension' });
    driver.click('floor', 3, 3);
    driver.click('floor', 4.02, 4.5);
    driver.click('floor', 3.5, 5.5);
    driver.key('Enter');
    return driver;
  };
  const shape = (driver: Driver) => {
    const { job } = driver.board.getState();
    const dimension = driver.scheme.dimensions?.at(-1);
    return dimension && dimensionShape(dimension, driver.scheme, job);
  };

  it('follows the block when it is moved and when it is resized', () => {
    const driver = drawn();
    expect(shape(driver)?.value).toBeCloseTo(1, 9);
    driver.board.dispatch('move', (job) => void moveBlock(job, 'b1', [0.5, 0, 0]));
    expect(shape(driver)?.value).toBeCloseTo(1.5, 9);
    driver.board.dispatch('resize', (job) => void resizeBlock(job, 'b1', [5, 4, 0], [6, 5, 2.4]));
    expect(shape(driver)?.value).toBeCloseTo(2, 9);
  });

  it('keeps to its place when the block is deleted', () => {
    const driver = drawn();
    driver.board.dispatch('delete', (job) => removeBlock(job, 'b1'));
    expect(shape(driver)?.value).toBeCloseTo(1, 9);
  });
});
