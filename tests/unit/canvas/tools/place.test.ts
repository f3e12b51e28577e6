import { describe, expect, it } from 'vitest';
import { collarHeight } from '../../../../src/canvas/tools/hood.ts';
import { emptyJob } from '../../../../src/graph/templates.ts';
import { bentJob, drive } from '../driver.ts';

describe('the hood tool', () => {
  it('places the job’s hood at its height over the cooktop, and goes back to selecting', () => {
    const job = emptyJob('metric');
    const driver = drive(job, { tool: 'hood' });
    driver.click('floor', 1, 2);
    expect(driver.node('n1')).toEqual({
      id: 'n1',
      at: [1, 2, collarHeight(job)],
      role: 'hood',
      hood: 'hood-1',
    });
    expect(driver.board.getState().tool).toBe('select');
    expect(driver.board.getState().selection.nodes).toEqual(['n1']);
    expect(driver.undoSteps()).toEqual(['place hood']);
  });

  it('puts the collar of a hood 36 + 28 + 9 in above the floor over a range 28 in below it', () => {
    const job = emptyJob('imperial');
    job.kitchen.mountingHeight = 28 * 0.0254;
    expect(collarHeight(job)).toBeCloseTo(73 * 0.0254, 12);
  });

  it('places it where it is clicked on a section', () => {
    const driver = drive(emptyJob('metric'), { tool: 'hood' });
    driver.click('section-x', 1, 1.8);
    expect(driver.node('n1').at).toEqual([1, 0, 1.8]);
  });

  it('makes an invented hood where the job has none, in the same undo step', () => {
    const job = emptyJob('metric');
    job.hoods = [];
    const driver = drive(job, { tool: 'hood' });
    driver.click('floor', 1, 1);
    expect(driver.board.getState().job.hoods).toHaveLength(1);
    expect(driver.node('n1').hood).toBe(driver.board.getState().job.hoods[0]?.id);
    driver.board.undo();
    expect(driver.board.getState().job).toStrictEqual(job);
  });

  it('makes another hood where the scheme shows the job’s hood already', () => {
    const driver = drive(bentJob(), { tool: 'hood' });
    driver.click('floor', 5, 5);
    const { hoods } = driver.board.getState().job;
    expect(hoods).toHaveLength(2);
    expect(driver.node('n5').hood).toBe(hoods[1]?.id);
  });

  it('places nothing when the press is lost', () => {
    const driver = drive(emptyJob('metric'), { tool: 'hood' });
    const { job } = driver.board.getState();
    driver.press('floor', 1, 1);
    driver.controller.cancel();
    driver.release('floor', 1, 1);
    expect(driver.board.getState().job).toBe(job);
  });
});

describe('the cap tool', () => {
  it('shows the end that would be capped', () => {
    const driver = drive(bentJob(), { tool: 'cap' });
    driver.move('floor', 3, 3);
    expect(driver.board.getState().hover.nodes).toEqual(['n4']);
    driver.move('floor', 3, 1);
    expect(driver.board.getState().hover.nodes).toEqual([]);
  });

  it('caps a level end for a wall', () => {
    const driver = drive(bentJob(), { tool: 'cap' });
    driver.click('floor', 3, 3);
    expect(driver.node('n4')).toMatchObject({ role: 'cap', cap: 'wall-flap' });
    expect(driver.undoSteps()).toEqual(['place cap']);
  });

  it('caps a rising end for a roof', () => {
    const job = bentJob();
    const end = job.schemes[0]?.nodes[3];
    if (end) end.at = [3, 1, 4];
    const driver = drive(job, { tool: 'cap' });
    driver.click('section-x', 3, 4);
    expect(driver.node('n4')).toMatchObject({ role: 'cap', cap: 'roof-cap' });
  });

  it('refuses a turn, a hood and empty paper, and says where a cap goes', () => {
    const driver = drive(bentJob(), { tool: 'cap' });
    const { job } = driver.board.getState();
    for (const [u, v] of [
      [3, 1],
      [1, 1],
      [6, 6],
    ] as const)
      driver.click('floor', u, v);
    expect(driver.board.getState().job).toBe(job);
    expect(driver.said.filter(Boolean)).toEqual(Array(3).fill('A cap goes on the open end of a run.'));
  });
});

describe('the insert tool', () => {
  it('puts a node into the leg that is clicked, and stays', () => {
    const driver = drive(bentJob(), { tool: 'insert' });
    driver.click('floor', 2, 1.02);
    expect(driver.node('n5').at).toEqual([2, 1, 2.4]);
    expect(driver.board.getState().tool).toBe('insert');
    expect(driver.undoSteps()).toEqual(['insert node']);
  });

  it('does nothing on a node and on empty paper', () => {
    const driver = drive(bentJob(), { tool: 'insert' });
    const { job } = driver.board.getState();
    driver.click('floor', 3, 1);
    driver.click('floor', 6, 6);
    expect(driver.board.getState().job).toBe(job);
  });

  it.each(['hood', 'cap', 'insert'] as const)('Escape leaves the %s tool', (tool) => {
    const driver = drive(bentJob(), { tool });
    expect(driver.key('Escape')).toBe(true);
    expect(driver.board.getState().tool).toBe('select');
  });
});

describe('panning and zooming', () => {
  it('moves the sheet with the pan tool', () => {
    const driver = drive(bentJob(), { tool: 'pan' });
    driver.drag('floor', [1, 1], [2, 1.5]);
    expect(driver.view('floor')).toEqual({ scale: 100, panX: 200, panY: 450 });
  });

  it('moves the sheet with the middle button and leaves the leg in hand alone', () => {
    const driver = drive(bentJob(), { tool: 'draw' });
    driver.click('floor', 3, 3);
    driver.drag('floor', [4, 3], [5, 3], { button: 1 });
    expect(driver.view('floor').panX).toBe(200);
    expect(driver.controller.phase).toBe('draw/leg');
    driver.click('floor', 5, 3);
    expect(driver.node('n5').at).toEqual([5, 3, 2.4]);
  });

  it('moves the sheet while the space bar is down, in any tool', () => {
    const driver = drive(bentJob());
    const { job } = driver.board.getState();
    driver.key(' ');
    expect(driver.controller.cursor).toBe('grab');
    driver.drag('floor', [3, 1], [4, 1]);
    driver.controller.keyUp({
      key: ' ',
      modifiers: { shift: false, alt: false, mod: false },
      sheet: 'floor',
    });
    expect(driver.view('floor').panX).toBe(200);
    expect(driver.board.getState().job).toBe(job);
    expect(driver.controller.cursor).not.toBe('grab');
  });

  it('puts the sheet back by Escape', () => {
    const driver = drive(bentJob(), { tool: 'pan' });
    driver.press('floor', 1, 1);
    driver.move('floor', 2, 1);
    driver.key('Escape');
    expect(driver.view('floor').panX).toBe(100);
  });

  it('keeps the place under the pointer where it is when it zooms', () => {
    const driver = drive(bentJob());
    driver.controller.zoom('floor', { x: 300, y: 200 }, 2);
    const { scale, panX, panY } = driver.view('floor');
    expect([(300 - panX) / scale, (panY - 200) / scale]).toEqual([2, 3]);
    expect(scale).toBe(200);
  });
});
