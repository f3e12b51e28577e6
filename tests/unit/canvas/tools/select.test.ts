import { describe, expect, it } from 'vitest';
import { nothing } from '../../../../src/canvas/board.ts';
import { bentJob, type Driver, drive } from '../driver.ts';

function selection(driver: Driver) {
  return driver.board.getState().selection;
}

describe('selecting', () => {
  it('shows what is under the pointer', () => {
    const driver = drive(bentJob());
    driver.move('floor', 3, 1);
    expect(driver.board.getState().hover).toEqual({ nodes: ['n3'], segments: [] });
    driver.move('floor', 2, 1);
    expect(driver.board.getState().hover).toEqual({ nodes: [], segments: ['d2'] });
    driver.controller.out();
    expect(driver.board.getState().hover).toEqual(nothing);
  });

  it('selects the one thing that is clicked', () => {
    const driver = drive(bentJob());
    driver.click('floor', 3, 1);
    driver.click('section-x', 2, 2.4);
    expect(selection(driver)).toEqual({ nodes: [], segments: ['d2'] });
  });

  it('adds and takes away with Shift', () => {
    const driver = drive(bentJob());
    driver.click('floor', 3, 1);
    driver.click('floor', 3, 3, { shift: true });
    expect(selection(driver).nodes).toEqual(['n3', 'n4']);
    driver.click('floor', 3, 1, { shift: true });
    expect(selection(driver).nodes).toEqual(['n4']);
  });

  it('selects nothing by a click on empty paper', () => {
    const driver = drive(bentJob());
    driver.click('floor', 3, 1);
    driver.click('floor', 5, 5);
    expect(selection(driver)).toEqual(nothing);
  });

  it('keeps what is selected on a Shift click on empty paper', () => {
    const driver = drive(bentJob());
    driver.click('floor', 3, 1);
    driver.click('floor', 5, 5, { shift: true });
    expect(selection(driver).nodes).toEqual(['n3']);
  });

  it('changes no document and leaves no undo step', () => {
    const driver = drive(bentJob());
    const { job } = driver.board.getState();
    driver.click('floor', 3, 1);
    driver.drag('floor', [5, 5], [0, 0]);
    expect(driver.board.getState().job).toBe(job);
    expect(driver.undoSteps()).toEqual([]);
  });

  it('selects everything by Control and A', () => {
    const driver = drive(bentJob());
    expect(driver.key('a', { mod: true })).toBe(true);
    expect(selection(driver)).toEqual({ nodes: ['n1', 'n2', 'n3', 'n4'], segments: ['d1', 'd2', 'd3'] });
  });

  it('lets go of the selection by Escape', () => {
    const driver = drive(bentJob());
    driver.click('floor', 3, 1);
    expect(driver.key('Escape')).toBe(true);
    expect(selection(driver)).toEqual(nothing);
    expect(driver.key('Escape')).toBe(false);
  });

  it('is restored when the press is lost', () => {
    const driver = drive(bentJob());
    driver.click('floor', 3, 1);
    driver.press('floor', 3, 3);
    expect(selection(driver).nodes).toEqual(['n4']);
    driver.controller.cancel();
    expect(selection(driver).nodes).toEqual(['n3']);
  });
});

describe('selecting by a box', () => {
  it('takes what a box to the right encloses', () => {
    const driver = drive(bentJob());
    driver.drag('floor', [2.5, 0.5], [3.5, 4]);
    expect(new Set(selection(driver).nodes)).toEqual(new Set(['n3', 'n4']));
    expect(selection(driver).segments).toEqual(['d3']);
  });

  it('takes what a box to the left touches', () => {
    const driver = drive(bentJob());
    driver.drag('floor', [3.5, 4], [2.5, 0.5]);
    expect(new Set(selection(driver).segments)).toEqual(new Set(['d2', 'd3']));
  });

  it('adds with Shift', () => {
    const driver = drive(bentJob());
    driver.click('floor', 2, 1);
    driver.drag('floor', [2.5, 2.5], [3.5, 4], { shift: true });
    expect(selection(driver)).toEqual({ nodes: ['n4'], segments: ['d2'] });
  });

  it('gives back the selection of before when it is cancelled half way', () => {
    const driver = drive(bentJob());
    driver.click('floor', 3, 1);
    driver.press('floor', 5, 5);
    driver.move('floor', 0, 0);
    expect(selection(driver).nodes.length).toBeGreaterThan(1);
    driver.key('Escape');
    expect(selection(driver).nodes).toEqual(['n3']);
    expect(driver.shapes('floor')).toEqual([]);
    driver.release('floor', 0, 0);
    expect(selection(driver).nodes).toEqual(['n3']);
  });
});

describe('moving', () => {
  it('moves a node in the plane of the sheet, in one undo step', () => {
    const driver = drive(bentJob());
    driver.drag('floor', [3, 1], [4, 1.5]);
    expect(driver.node('n3').at).toEqual([4, 1.5, 2.4]);
    expect(driver.undoSteps()).toEqual(['move turn']);
    driver.drag('section-x', [4, 2.4], [4, 3]);
    expect(driver.node('n3').at).toEqual([4, 1.5, 3]);
  });

  it('keeps its distance to the pointer that took hold beside the middle', () => {
    const driver = drive(bentJob());
    driver.drag('floor', [3.03, 1.04], [4.03, 1.54]);
    expect(driver.node('n3').at).toEqual([4, 1.5, 2.4]);
  });

  it('does not move within the slop of a click', () => {
    const driver = drive(bentJob());
    const { job } = driver.board.getState();
    driver.drag('floor', [3, 1], [3.03, 1.02]);
    expect(driver.board.getState().job).toBe(job);
  });

  it('moves both ends of a leg', () => {
    const driver = drive(bentJob());
    driver.drag('floor', [3, 2], [4, 2]);
    expect([driver.node('n3').at, driver.node('n4').at]).toEqual([
      [4, 1, 2.4],
      [4, 3, 2.4],
    ]);
    expect(driver.undoSteps()).toEqual(['move duct']);
  });

  it('moves everything selected and says how many', () => {
    const driver = drive(bentJob());
    driver.drag('floor', [2.5, 0.5], [3.5, 4]);
    driver.drag('floor', [3, 3], [4, 3]);
    expect(driver.node('n3').at).toEqual([4, 1, 2.4]);
    expect(driver.node('n4').at).toEqual([4, 3, 2.4]);
    expect(driver.undoSteps()).toEqual(['move 2 nodes']);
  });

  it('keeps a riser plumb when it is moved on the floor sheet', () => {
    const driver = drive(bentJob());
    driver.drag('floor', [1, 1], [2, 1]);
    expect([driver.node('n1').at, driver.node('n2').at]).toEqual([
      [2, 1, 1.8],
      [2, 1, 2.4],
    ]);
    expect(driver.undoSteps()).toEqual(['move riser']);
  });

  it('names what it moves', () => {
    const driver = drive(bentJob());
    driver.drag('section-x', [1, 1.8], [1, 1.5]);
    driver.drag('floor', [3, 3], [3, 4]);
    expect(driver.undoSteps()).toEqual(['move hood', 'move open end']);
  });

  it('goes straight with Shift', () => {
    const driver = drive(bentJob());
    driver.drag('floor', [3, 1], [4.4, 1.3], { shift: true });
    expect(driver.node('n3').at.slice(1)).toEqual([1, 2.4]);
  });

  it('shows real numbers while it moves and solves once for each step', () => {
    const driver = drive(bentJob());
    driver.press('floor', 3, 1);
    driver.move('floor', 3.5, 1);
    const before = driver.board.stats.solves;
    for (const u of [3.7, 3.9, 4.1]) driver.move('floor', u, 1);
    expect(driver.board.stats.solves - before).toBe(3);
    expect(driver.board.getState().solution.route.segments.get('d2')?.length).toBeCloseTo(3.1, 9);
  });

  it('restores the very same document and solution by Escape', () => {
    const driver = drive(bentJob());
    const { job, solution } = driver.board.getState();
    driver.press('floor', 3, 1);
    driver.move('floor', 4, 2);
    expect(driver.board.getState().live).not.toBe(job);
    driver.key('Escape');
    expect(driver.board.getState().job).toBe(job);
    expect(driver.board.getState().live).toBe(job);
    expect(driver.board.getState().solution).toBe(solution);
    driver.release('floor', 4, 2);
    expect(driver.board.getState().job).toBe(job);
    expect(driver.undoSteps()).toEqual([]);
  });

  it('leaves no step where the node is brought back to its place', () => {
    const driver = drive(bentJob());
    const { job } = driver.board.getState();
    driver.press('floor', 3, 1);
    driver.move('floor', 4, 2);
    driver.release('floor', 3, 1);
    expect(driver.board.getState().job).toBe(job);
  });

  it('joins a node on which it is let go', () => {
    const job = bentJob();
    job.schemes[0]?.nodes.push(
      { id: 'n5', at: [6, 3, 2.4], role: 'turn' },
      { id: 'n6', at: [6, 6, 2.4], role: 'turn' },
    );
    job.schemes[0]?.segments.push({ id: 'd4', from: 'n5', to: 'n6' });
    const driver = drive(job);
    driver.drag('floor', [3, 3], [6, 3]);
    expect(driver.scheme.nodes.map(({ id }) => id)).not.toContain('n4');
    expect(driver.scheme.segments).toContainEqual({ id: 'd3', from: 'n3', to: 'n5' });
    expect(driver.undoSteps()).toEqual(['move open end']);
  });

  it('is dropped when the sheet that it is on goes', () => {
    const driver = drive(bentJob());
    const { job } = driver.board.getState();
    const again = { ...surfaceLike, sheet: 'section-x' as const };
    const detach = driver.controller.attach(again);
    driver.press('section-x', 3, 2.4);
    driver.move('section-x', 4, 3);
    detach();
    expect(driver.board.getState().live).toBe(job);
    expect(driver.controller.phase).toBe('select/idle');
  });
});

const surfaceLike = {
  size: () => ({ width: 800, height: 600 }),
  viewport: () => ({ scale: 100, panX: 0, panY: 0 }),
  setViewport: () => {},
  fit: () => {},
  labelAt: () => null,
  labelOf: () => null,
  drawActive: () => {},
};

describe('editing what is selected by keys', () => {
  it('nudges by a centimetre, and by ten with Shift, each one undo step', () => {
    const driver = drive(bentJob());
    driver.click('floor', 3, 3);
    driver.key('ArrowRight');
    driver.key('ArrowUp', { shift: true });
    expect(driver.node('n4').at).toEqual([3.01, 3.1, 2.4]);
    expect(driver.undoSteps()).toEqual(['nudge open end', 'nudge open end']);
  });

  it('nudges by an inch where the job is in inches', () => {
    const job = bentJob();
    job.units = 'imperial';
    const driver = drive(job);
    driver.click('floor', 3, 3);
    driver.key('ArrowLeft');
    expect(driver.node('n4').at[0]).toBeCloseTo(3 - 0.0254, 12);
  });

  it('nudges in the plane of the sheet that was used last', () => {
    const driver = drive(bentJob());
    driver.click('section-x', 1, 1.8);
    driver.key('ArrowDown');
    expect(driver.node('n1').at).toEqual([1, 1, 1.79]);
  });

  it.each(['Delete', 'Backspace'])('deletes a turn by %s and heals the run', (key) => {
    const driver = drive(bentJob());
    driver.click('floor', 3, 1);
    driver.key(key);
    expect(driver.scheme.nodes.map(({ id }) => id)).toEqual(['n1', 'n2', 'n4']);
    expect(driver.scheme.segments).toContainEqual({ id: 'd2', from: 'n2', to: 'n4' });
    expect(driver.undoSteps()).toEqual(['delete']);
  });

  it('leaves the arrow keys alone where nothing is selected', () => {
    expect(drive(bentJob()).key('ArrowLeft')).toBe(false);
  });
});

describe('a double click on a leg', () => {
  it('puts a node into it and selects it', () => {
    const driver = drive(bentJob());
    driver.doubleClick('floor', 2, 1);
    expect(driver.node('n5').at).toEqual([2, 1, 2.4]);
    expect(selection(driver)).toEqual({ nodes: ['n5'], segments: [] });
    expect(driver.undoSteps()).toEqual(['insert node']);
  });
});
