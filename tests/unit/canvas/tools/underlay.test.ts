import { describe, expect, it } from 'vitest';
import type { Job, Underlay } from '../../../../src/graph/document.ts';
import { emptyJob } from '../../../../src/graph/templates.ts';
import { type Driver, drive } from '../driver.ts';

/** 4 m by 2 m with its lower left corner at the origin. */
const plan: Underlay = {
  id: 'u1',
  name: 'plan.png',
  sheet: 'floor',
  image: 'data:image/png;base64,scan',
  size: [400, 200],
  at: [0, 0],
  scale: 0.01,
  opacity: 0.5,
};

function jobWith(...underlays: Partial<Underlay>[]): Job {
  return { ...emptyJob('imperial'), underlays: underlays.map((each) => ({ ...plan, ...each })) };
}

const underlay = ({ board }: Driver, index = 0) => board.getState().live.underlays[index] as Underlay;

describe('two points and a distance', () => {
  const scaled = (...changes: Partial<Underlay>[]) => {
    const hand = drive(jobWith(...changes), { tool: 'scale' });
    hand.click('floor', 1, 1);
    hand.click('floor', 3, 1);
    return hand;
  };

  it('scale the underlay about the first point, in one step', () => {
    const hand = scaled({});
    hand.type("10'");
    hand.key('Enter');
    const factor = (10 * 0.3048) / 2;
    expect(underlay(hand).scale).toBeCloseTo(0.01 * factor, 12);
    expect(underlay(hand).at).toEqual([1 - factor, 1 - factor].map((n) => expect.closeTo(n, 12)));
    expect(hand.undoSteps()).toEqual(['set underlay scale']);
    expect(hand.board.getState().tool).toBe('select');
    hand.board.undo();
    expect(underlay(hand)).toEqual(plan);
  });

  it('may lie on a locked underlay: a lock holds its place, not its scale', () => {
    const hand = scaled({ locked: true });
    hand.type('2');
    hand.key('Enter');
    expect(hand.undoSteps()).toEqual(['set underlay scale']);
  });

  it('leave the document alone when they are cancelled at any point', () => {
    for (const presses of [0, 1, 2]) {
      const hand = drive(jobWith({}), { tool: 'scale' });
      const { job } = hand.board.getState();
      for (let i = 0; i < presses; i++) hand.click('floor', 1 + i, 1);
      if (presses === 2) hand.type('10');
      hand.key('Escape');
      expect([hand.board.getState().job, hand.shapes('floor')]).toEqual([job, []]);
    }
  });

  it('are level or plumb while Shift is down', () => {
    const hand = drive(jobWith({}), { tool: 'scale' });
    hand.click('floor', 1, 1);
    hand.click('floor', 3, 1.4, { shift: true });
    hand.type("10'");
    hand.key('Enter');
    expect(underlay(hand).scale).toBeCloseTo((0.01 * 10 * 0.3048) / 2, 12);
  });

  it('that are too close are refused in words', () => {
    const hand = drive(jobWith({}), { tool: 'scale' });
    hand.click('floor', 1, 1);
    hand.click('floor', 1.01, 1);
    expect(hand.controller.phase).toBe('scale/second');
    expect(hand.said.at(-1)).toMatch(/too close/);
  });

  it('wait for a distance that can be read, and can be typed again', () => {
    const hand = scaled({});
    hand.key('Enter');
    expect(hand.said.at(-1)).toMatch(/Type the real distance/);
    hand.type('0');
    hand.key('Enter');
    expect(hand.said.at(-1)).toMatch(/more than nothing/);
    hand.key('Backspace');
    hand.type('4ft');
    hand.key('Enter');
    expect(underlay(hand).scale).toBeCloseTo((0.01 * 4 * 0.3048) / 2, 12);
  });

  it('act on the underlay that was chosen, though another lies over it', () => {
    const hand = drive(jobWith({}, { id: 'u2' }), { tool: 'scale', underlay: 'u1' });
    hand.click('floor', 1, 1);
    hand.click('floor', 3, 1);
    hand.type("10'");
    hand.key('Enter');
    expect(underlay(hand, 0).scale).not.toBe(0.01);
    expect(underlay(hand, 1).scale).toBe(0.01);
  });

  it('given by a finger open a field for the distance', () => {
    const hand = drive(jobWith({}), { tool: 'scale' });
    hand.click('floor', 1, 1, { pointerType: 'touch' });
    hand.click('floor', 3, 1, { pointerType: 'touch' });
    expect(hand.asks.at(-1)).toMatchObject({ label: 'Real distance between the two points', value: '' });
    expect(hand.asks.at(-1)?.commit('nonsense')).toMatch(/./);
    expect(hand.asks.at(-1)?.commit("10'")).toBeNull();
    expect(underlay(hand).scale).toBeCloseTo((0.01 * 10 * 0.3048) / 2, 12);
    expect(hand.asks.at(-1)).toBeNull();
  });

  it('end when the underlay is taken away meanwhile', () => {
    const hand = scaled({});
    hand.board.dispatch('remove underlay', (job) => {
      job.underlays = [];
    });
    expect(hand.controller.phase).toBe('scale/ready');
  });

  it('need an underlay', () => {
    const hand = drive(jobWith(), { tool: 'scale' });
    hand.click('floor', 1, 1);
    expect([hand.controller.phase, hand.said.at(-1)]).toEqual([
      'scale/ready',
      expect.stringMatching(/no underlay/),
    ]);
  });
});

describe('an underlay taken hold of', () => {
  it('follows the pointer and is moved in one step', () => {
    const hand = drive(jobWith({}), { tool: 'underlay' });
    hand.drag('floor', [1, 1], [2.5, 1.5]);
    expect(underlay(hand).at).toEqual([1.5, 0.5].map((n) => expect.closeTo(n, 12)));
    expect(hand.undoSteps()).toEqual(['move underlay']);
  });

  it('stays where it is when it is locked, and says why', () => {
    const hand = drive(jobWith({ locked: true }), { tool: 'underlay' });
    hand.drag('floor', [1, 1], [2.5, 1.5]);
    expect([underlay(hand).at, hand.undoSteps()]).toEqual([[0, 0], []]);
    expect(hand.said).toContain('plan.png is locked. Unlock it in the list of underlays to move it.');
  });

  it('goes back exactly on Escape in the middle', () => {
    const hand = drive(jobWith({}), { tool: 'underlay' });
    const { job } = hand.board.getState();
    hand.press('floor', 1, 1);
    hand.move('floor', 2, 2);
    expect(underlay(hand).at).not.toEqual([0, 0]);
    hand.key('Escape');
    expect(hand.board.getState().live).toBe(job);
    hand.release('floor', 2, 2);
    expect(hand.undoSteps()).toEqual([]);
  });

  it('is the topmost one', () => {
    const hand = drive(jobWith({}, { id: 'u2' }), { tool: 'underlay' });
    hand.drag('floor', [1, 1], [2, 1]);
    expect([underlay(hand, 0).at, underlay(hand, 1).at[0]]).toEqual([[0, 0], 1]);
  });

  it('is nudged by arrow keys in real units', () => {
    const hand = drive(jobWith({}), { tool: 'underlay' });
    hand.key('ArrowRight');
    hand.key('ArrowUp', { shift: true });
    expect(underlay(hand).at).toEqual([0.0254, 0.254].map((n) => expect.closeTo(n, 12)));
  });
});
