import { describe, expect, it } from 'vitest';
import { nothing } from '../../../../src/canvas/board.ts';
import { only } from '../../../../src/canvas/selection.ts';
import { bentJob, type Driver, drive, furnishedJob } from '../driver.ts';

const close = (values: readonly number[]) => values.map((value) => expect.closeTo(value, 9));
const selection = (driver: Driver) => driver.board.getState().selection;

describe('a move by typing', () => {
  const typed = () => {
    const driver = drive(bentJob(), { selection: only({ kind: 'node', id: 'n4' }) });
    expect(driver.key('m')).toBe(true);
    return driver;
  };

  it('goes by a distance in the direction of an arrow key, in one undo step', () => {
    const driver = typed();
    driver.type('250');
    driver.key('ArrowRight');
    expect(driver.board.getState().live.schemes[0]?.nodes[3]?.at).toEqual(close([3.25, 3, 2.4]));
    driver.key('Enter');
    expect(driver.node('n4').at).toEqual(close([3.25, 3, 2.4]));
    expect(driver.undoSteps()).toEqual(['move open end']);
  });

  it('takes an angle after Tab', () => {
    const driver = typed();
    driver.type('1 m');
    driver.key('Tab');
    driver.type('30');
    driver.key('Enter');
    expect(driver.node('n4').at).toEqual(close([3 + Math.cos(Math.PI / 6), 3.5, 2.4]));
  });

  it('goes up by a typed height', () => {
    const driver = typed();
    driver.type('u300');
    driver.key('Enter');
    expect(driver.node('n4').at).toEqual(close([3, 3, 2.7]));
  });

  it('waits for a direction, and says so', () => {
    const driver = typed();
    driver.type('250');
    driver.key('Enter');
    expect(driver.controller.phase).toBe('select/moving');
    expect(driver.said.at(-1)).toContain('aim');
  });

  it('may be typed while the pointer drags, which says the direction', () => {
    const driver = drive(bentJob());
    driver.press('floor', 3, 3);
    driver.move('floor', 3.6, 3);
    driver.type('400');
    driver.release('floor', 3.6, 3);
    expect(driver.node('n4').at).toEqual(close([3.4, 3, 2.4]));
    expect(driver.undoSteps()).toEqual(['move open end']);
  });

  it('carries blocks and nodes together', () => {
    const driver = drive(furnishedJob(), {
      selection: { nodes: ['n4'], segments: [], blocks: ['b1'], exits: ['x1'] },
    });
    driver.type('m100');
    driver.key('ArrowUp');
    driver.key('Enter');
    const { job } = driver.board.getState();
    expect(driver.node('n4').at[1]).toBeCloseTo(3.1, 9);
    expect(job.blocks[0]?.min[1]).toBeCloseTo(4.1, 9);
    expect(job.exits[0]?.min[1]).toBeCloseTo(6.1, 9);
    expect(driver.undoSteps()).toEqual(['move 3 things']);
  });
});

describe('a dragged corner', () => {
  it('is held square to both of its legs at once', () => {
    const driver = drive(bentJob());
    driver.press('floor', 3, 1);
    driver.move('floor', 3.5, 1.5);
    driver.move('floor', 3.03, 1.02);
    const reasons = driver.shapes('floor').flatMap((shape) => (shape.kind === 'snap' ? [shape.reason] : []));
    expect(reasons).toEqual([expect.stringContaining(',')]);
    driver.controller.cancel();
  });
});

describe('drawing with Shift', () => {
  it('keeps a leg level or upright on the sheet', () => {
    const driver = drive(bentJob(), { tool: 'draw' });
    driver.click('floor', 3, 3);
    driver.click('floor', 5, 3.4, { shift: true });
    const end = driver.scheme.nodes.at(-1);
    expect(end?.at).toEqual(close([5, 3, 2.4]));
  });
});

describe('things that lie over each other', () => {
  it('are taken one after the other by clicks on one place, and named', () => {
    const driver = drive(bentJob());
    const taken = [1, 2, 3].map(() => {
      driver.click('floor', 1, 1);
      return selection(driver);
    });
    expect(new Set(taken.map((each) => JSON.stringify(each))).size).toBe(3);
    expect(driver.said.at(-1)).toMatch(/3 of \d here/);
  });

  it('are taken one after the other by Tab, which then is the page’s own again', () => {
    const driver = drive(bentJob());
    driver.move('floor', 1, 1);
    const seen = new Set<string>();
    let count = 0;
    while (driver.key('Tab')) {
      seen.add(JSON.stringify(selection(driver)));
      count += 1;
    }
    expect(count).toBeGreaterThan(2);
    expect(seen.size).toBe(count);
  });

  it('leave Tab alone where there is only one', () => {
    const driver = drive(furnishedJob());
    driver.move('floor', 4.5, 4.5);
    expect(driver.key('Tab')).toBe(false);
  });
});

describe('a menu', () => {
  it('is asked for by the controller with what is there, which is selected', () => {
    const driver = drive(furnishedJob());
    driver.controller.menu({
      sheet: 'floor',
      point: { u: 3, v: 1 },
      screen: { x: 400, y: 400 },
      modifiers: { shift: false, alt: false, mod: false },
      button: 2,
      pointerType: 'mouse',
      clicks: 1,
    });
    expect(driver.menus.at(-1)?.items[0]).toEqual({ kind: 'node', id: 'n3' });
    expect(selection(driver)).toEqual(only({ kind: 'node', id: 'n3' }));
  });

  it('is asked for by the menu key, for what is selected', () => {
    const driver = drive(furnishedJob(), { selection: only({ kind: 'block', id: 'b1' }) });
    expect(driver.key('F10', { shift: true })).toBe(true);
    expect(driver.menus.at(-1)).toMatchObject({
      items: [{ kind: 'block', id: 'b1' }],
      point: { u: 4.5, v: 4.5 },
    });
    expect(selection(driver)).toEqual(only({ kind: 'block', id: 'b1' }));
  });

  it('of an empty place lets go of the selection', () => {
    const driver = drive(bentJob(), { selection: only({ kind: 'node', id: 'n3' }) });
    driver.key('Escape');
    driver.key('ContextMenu');
    expect(driver.menus.at(-1)?.items).toEqual([]);
    expect(selection(driver)).toEqual(nothing);
  });
});

describe('what is selected elsewhere', () => {
  it('does not stand in the way of what is clicked', () => {
    const driver = drive(bentJob());
    driver.click('floor', 3, 2);
    expect(selection(driver)).toEqual(only({ kind: 'segment', id: 'd3' }));
    driver.click('floor', 3, 1);
    expect(selection(driver)).toEqual(only({ kind: 'node', id: 'n3' }));
  });
});
