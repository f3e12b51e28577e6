import { describe, expect, it } from 'vitest';
import { idsOf, only } from '../../../../src/canvas/selection.ts';
import { INCH } from '../../../../src/units/index.ts';
import { bentJob, type Driver, drive, furnishedJob } from '../driver.ts';

const blocks = (driver: Driver) => driver.board.getState().job.blocks;
const exits = (driver: Driver) => driver.board.getState().job.exits;
const close = (values: readonly number[]) => values.map((value) => expect.closeTo(value, 9));

describe('the block tool', () => {
  it('draws a chase by two clicks, from floor to ceiling', () => {
    const driver = drive(bentJob(), { tool: 'block' });
    driver.click('floor', 4, 4);
    driver.click('floor', 4.6, 4.4);
    const [block] = blocks(driver);
    expect(block).toMatchObject({ kind: 'chase', name: 'Chase', min: close([4, 4, 0]) });
    expect(block?.max).toEqual(close([4.6, 4.4, driver.board.getState().job.kitchen.ceilingHeight]));
    expect(driver.board.getState()).toMatchObject({
      tool: 'select',
      selection: only({ kind: 'block', id: 'b1' }),
    });
    expect(driver.undoSteps()).toEqual(['draw chase']);
  });

  it('draws by one drag too, in any direction', () => {
    const driver = drive(bentJob(), { tool: 'block' });
    driver.drag('floor', [5, 5], [4, 4.5]);
    expect(blocks(driver)[0]).toMatchObject({ min: close([4, 4.5, 0]) });
  });

  it('takes typed sizes: across, up and high', () => {
    const driver = drive(bentJob(), { tool: 'block' });
    driver.click('floor', 4, 4);
    driver.move('floor', 4.5, 4.5);
    driver.type('600');
    driver.key('Tab');
    driver.type('400');
    driver.key('Tab');
    driver.type('1.2 m');
    driver.key('Enter');
    expect(blocks(driver)[0]?.max).toEqual(close([4.6, 4.4, 1.2]));
  });

  it('draws on a section too, as deep as is typed', () => {
    const driver = drive(bentJob(), { tool: 'block' });
    driver.click('section-x', 4, 0);
    driver.move('section-x', 4.6, 2);
    driver.key('Tab');
    driver.key('Tab');
    driver.type('500');
    driver.key('Enter');
    const [block] = blocks(driver);
    expect((block?.max[1] ?? 0) - (block?.min[1] ?? 0)).toBeCloseTo(0.5, 9);
    expect(block?.max[2]).toBeCloseTo(2, 9);
  });

  it('takes a kind by its number, and none by a number that has none', () => {
    const driver = drive(bentJob(), { tool: 'block' });
    expect(driver.key('3')).toBe(true);
    expect(driver.said.at(-1)).toBe('Cabinet.');
    driver.board.set({ tool: 'exit' });
    expect(driver.key('3')).toBe(false);
    driver.board.set({ tool: 'block' });
    driver.drag('floor', [4, 4], [5, 5]);
    expect(blocks(driver)[0]).toMatchObject({ kind: 'cabinet', name: 'Cabinet' });
  });

  it('follows a kind that is chosen while the box is being drawn', () => {
    const driver = drive(bentJob(), { tool: 'block' });
    driver.click('floor', 4, 4);
    driver.move('floor', 4.6, 4.4);
    driver.board.set({ kinds: { ...driver.board.getState().kinds, block: 'cabinet' } });
    expect(driver.board.getState().live.blocks[0]?.kind).toBe('cabinet');
    driver.click('floor', 4.6, 4.4);
    expect(blocks(driver)[0]?.kind).toBe('cabinet');
  });

  it('takes the next kind by Tab, and a line is a joist as wide as one is', () => {
    const driver = drive(bentJob(), { tool: 'block' });
    for (const _ of [1, 2, 3]) driver.key('Tab');
    driver.click('floor', 4, 4);
    driver.click('floor', 4, 5.5);
    const [joist] = blocks(driver);
    expect(joist?.kind).toBe('joist');
    expect((joist?.max[0] ?? 0) - (joist?.min[0] ?? 0)).toBeCloseTo(1.5 * INCH, 9);
    expect(joist?.min[2]).toBe(driver.board.getState().job.kitchen.ceilingHeight);
  });

  it('repeats joists by a typed count and spacing, in one step more', () => {
    const driver = drive(bentJob(), { tool: 'block' });
    for (const _ of [1, 2, 3]) driver.key('Tab');
    driver.click('floor', 4, 4);
    driver.click('floor', 4, 5.5);
    expect(driver.controller.phase).toBe('box/repeating');
    driver.type('5');
    driver.key('Tab');
    driver.type('16"');
    driver.key('Enter');
    const places = blocks(driver).map(({ min }) => min[0]);
    expect(places).toEqual(close([0, 1, 2, 3, 4, 5].map((n) => (places[0] ?? 0) + n * 16 * INCH)));
    expect(idsOf(driver.board.getState().selection, 'block')).toHaveLength(6);
    expect(driver.controller.phase).toBe('select/idle');
    expect(driver.undoSteps()).toEqual(['draw joist', 'repeat joist']);
  });

  it('counts the copies up to the pointer where none are typed', () => {
    const driver = drive(furnishedJob());
    driver.click('floor', 4.5, 4.5);
    driver.key('Enter', { shift: true });
    driver.move('floor', 6.5, 4.5);
    driver.press('floor', 6.5, 4.5);
    driver.release('floor', 6.5, 4.5);
    expect(blocks(driver)).toHaveLength(3);
    expect(driver.controller.phase).toBe('select/idle');
  });

  it('refuses a block without room in it', () => {
    const driver = drive(bentJob(), { tool: 'block' });
    driver.click('floor', 4, 4);
    driver.key('Enter');
    expect(blocks(driver)).toEqual([]);
    expect(driver.controller.phase).toBe('box/corner');
  });
});

describe('the exit tool', () => {
  it('draws an outside wall along a line', () => {
    const driver = drive(bentJob(), { tool: 'exit' });
    driver.click('floor', 0, 5);
    driver.click('floor', 4, 5);
    expect(exits(driver)[0]).toMatchObject({ kind: 'wall', min: close([0, 5, 0]) });
    expect(exits(driver)[0]?.max[1]).toBeCloseTo(5 + 6 * INCH, 9);
    expect(driver.undoSteps()).toEqual(['draw outside wall']);
  });

  it('draws a roof after Tab, above the ceiling', () => {
    const driver = drive(bentJob(), { tool: 'exit' });
    driver.key('Tab');
    driver.click('floor', 0, 0);
    driver.click('floor', 4, 4);
    const [roof] = exits(driver);
    expect(roof?.kind).toBe('roof');
    expect(roof?.min[2]).toBeGreaterThan(driver.board.getState().job.kitchen.ceilingHeight);
  });
});

describe('a block', () => {
  it('is selected by a click on it and moved by a drag, a corner of it held to the grid', () => {
    const driver = drive(furnishedJob());
    driver.drag('floor', [4.6, 4.5], [4.93, 4.5]);
    expect(blocks(driver)[0]?.min[0]).toBeCloseTo(4.3, 9);
    expect(driver.undoSteps()).toEqual(['move Chase']);
  });

  it('is resized by its grips; the sides across stay', () => {
    const driver = drive(furnishedJob());
    driver.click('floor', 4.5, 4.5);
    driver.drag('floor', [5, 4.5], [5.5, 4.2]);
    expect(blocks(driver)[0]).toMatchObject({ min: close([4, 4, 0]), max: close([5.5, 5, 2.4]) });
    expect(driver.undoSteps()).toEqual(['resize block']);
  });

  it('pulled through itself is the other way round', () => {
    const driver = drive(furnishedJob());
    driver.click('floor', 4.5, 4.5);
    driver.drag('floor', [5, 4.5], [3.5, 4.5]);
    expect(blocks(driver)[0]).toMatchObject({ min: close([3.5, 4, 0]), max: close([4, 5, 2.4]) });
  });

  it('is nudged and deleted by keys', () => {
    const driver = drive(furnishedJob());
    driver.click('floor', 4.5, 4.5);
    driver.key('ArrowRight');
    expect(blocks(driver)[0]?.min[0]).toBeCloseTo(4.01, 9);
    driver.key('Delete');
    expect(blocks(driver)).toEqual([]);
    expect(driver.undoSteps()).toEqual(['nudge Chase', 'delete']);
  });

  it('is renamed in place', () => {
    const driver = drive(furnishedJob());
    driver.click('floor', 4.5, 4.5);
    driver.key('Enter');
    expect(driver.asks.at(-1)).toMatchObject({ value: 'Chase', label: 'Name of the block' });
    expect(driver.answer('Pantry chase')).toBeNull();
    expect(blocks(driver)[0]?.name).toBe('Pantry chase');
  });

  it('is taken by a box: to the right where it is enclosed, to the left where it is touched', () => {
    const driver = drive(furnishedJob());
    driver.drag('floor', [3.8, 3.8], [4.5, 4.5]);
    expect(idsOf(driver.board.getState().selection, 'block')).toEqual([]);
    driver.drag('floor', [5.4, 5.4], [4.5, 4.5]);
    expect(idsOf(driver.board.getState().selection, 'block')).toEqual(['b1']);
    driver.drag('floor', [3.8, 3.8], [5.2, 5.2]);
    expect(idsOf(driver.board.getState().selection, 'block')).toEqual(['b1']);
  });

  it('in the way of a dragged duct is a finding while it is dragged', () => {
    const job = furnishedJob();
    const [block] = job.blocks;
    if (block) block.kind = 'obstacle';
    const driver = drive(job);
    const clashes = () =>
      driver.board.getState().solution.findings.filter(({ blocks: of }) => of?.includes('b1'));
    expect(clashes()).toEqual([]);
    driver.press('floor', 3, 3);
    driver.move('floor', 4.5, 5.5);
    expect(clashes().length).toBeGreaterThan(0);
    driver.controller.cancel();
    expect(clashes()).toEqual([]);
  });
});
