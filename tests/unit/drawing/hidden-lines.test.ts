import { describe, expect, it } from 'vitest';
import { hiddenLines } from '../../../src/drawing/hidden-lines.ts';
import { circle, type Drawable, drawable, line, polygon, type Stroke } from '../../../src/drawing/stroke.ts';

const square = (minU: number, minV: number, maxU: number, maxV: number) =>
  polygon([
    { u: minU, v: minV },
    { u: maxU, v: minV },
    { u: maxU, v: maxV },
    { u: minU, v: maxV },
  ]);

const filled = (...fill: Stroke[]): Drawable =>
  drawable({ kind: 'leg', id: 'x', of: 'segment', colourOf: null, near: 0, fill: [fill] });

/** A line from 0 to 4 behind what is given. */
const behind = (...covers: Drawable[]) =>
  hiddenLines([filled(square(9, 9, 10, 10)), ...covers]).visible([line({ u: 0, v: 0 }, { u: 4, v: 0 })], 0);

const spans = (strokes: readonly Stroke[]) =>
  strokes.map((stroke) => (stroke.kind === 'line' ? stroke.points.map(({ u }) => u) : []));

describe('lines that nearer things hide', () => {
  it('a line behind a fill is cut where the fill begins and ends', () => {
    const seen = spans(behind(filled(square(1, -1, 3, 1))));
    expect(seen).toHaveLength(2);
    expect(seen.flat()).toEqual([0, expect.closeTo(1, 9), expect.closeTo(3, 9), 4]);
  });

  it('a line in front of a fill stays whole', () => {
    const cover = filled(square(1, -1, 3, 1));
    const own = line({ u: 0, v: 0 }, { u: 4, v: 0 });
    expect(hiddenLines([cover, filled(square(9, 9, 10, 10))]).visible([own], 1)).toEqual([own]);
  });

  it('a line along the rim of a fill stays, for the fill ends there', () => {
    expect(spans(behind(filled(square(1, 0, 3, 1))))).toEqual([[0, 4]]);
  });

  it('two fills that overlap hide what either of them hides', () => {
    const seen = spans(behind(filled(square(1, -1, 2.5, 1)), filled(square(2, -1, 3, 1))));
    expect(seen.flat()).toEqual([0, expect.closeTo(1, 9), expect.closeTo(3, 9), 4]);
  });

  it('a line wholly behind a fill leaves nothing', () => {
    expect(behind(filled(square(-1, -1, 5, 1)))).toEqual([]);
  });

  it('an arc behind a fill stays an arc of the same circle, with what is hidden cut out of its turn', () => {
    const seen = hiddenLines([filled(square(9, 9, 10, 10)), filled(square(-3, -3, 3, 0))]).visible(
      [circle({ u: 0, v: 0 }, 1)],
      0,
    );
    expect(seen).toEqual([
      {
        kind: 'arc',
        centre: { u: 0, v: 0 },
        radius: 1,
        start: 0,
        end: expect.closeTo(Math.PI, 9),
      },
    ]);
  });

  it('a round fill hides to its true rim, not to a polygon inside it', () => {
    const seen = spans(behind(filled(circle({ u: 2, v: 0 }, 1))));
    expect(seen.flat()[1]).toBeCloseTo(1, 4);
    expect(seen.flat()[2]).toBeCloseTo(3, 4);
  });
});
