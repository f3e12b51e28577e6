import { describe, expect, it } from 'vitest';
import { beside } from '../../../src/app/guide/beside.ts';
import { shownTurn, steps } from '../../../src/app/guide/steps.ts';
import { exampleJob } from '../../../src/app/start.ts';
import { createBoard } from '../../../src/app/store.ts';

const window = { width: 1440, height: 900 };
const card = { width: 340, height: 280 };

function covers(spot: { left: number; top: number }, place: DOMRectInit): boolean {
  const { x = 0, y = 0, width = 0, height = 0 } = place;
  return (
    spot.left < x + width && spot.left + card.width > x && spot.top < y + height && spot.top + card.height > y
  );
}

describe('the card of the guided start', () => {
  it('stands in the window and does not cover what it is about, wherever that is', () => {
    for (let x = 0; x < 1400; x += 70)
      for (let y = 0; y < 860; y += 43) {
        const place = { left: x, top: y, width: 90, height: 40 };
        const spot = beside(place, card, window);
        expect(covers(spot, { x, y, width: 90, height: 40 })).toBe(false);
        expect(spot.left).toBeGreaterThanOrEqual(0);
        expect(spot.top).toBeGreaterThanOrEqual(0);
        expect(spot.left + card.width).toBeLessThanOrEqual(window.width);
        expect(spot.top + card.height).toBeLessThanOrEqual(window.height);
      }
  });

  it('takes the side that is wished for where it has room', () => {
    const place = { left: 600, top: 400, width: 90, height: 40 };
    expect(beside(place, card, window, 'right').left).toBeGreaterThan(690);
    expect(beside(place, card, window, 'left').left).toBeLessThan(600 - card.width);
  });

  it('has a place where nothing is marked', () => {
    expect(beside(null, card, window).left).toBeGreaterThan(0);
  });
});

describe('the steps of the guided start', () => {
  it('are five to seven, and the example has the turn that two of them are about', () => {
    expect(steps.length).toBeGreaterThanOrEqual(5);
    expect(steps.length).toBeLessThanOrEqual(7);
    expect(shownTurn(createBoard(exampleJob()).getState())).not.toBeNull();
  });
});
