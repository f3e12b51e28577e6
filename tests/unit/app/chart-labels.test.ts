import { describe, expect, it } from 'vitest';
import { alikePressures } from '../../../src/app/charts/alike.ts';
import { type Box, boxOf, labelsBeside, linesApart, tickTexts } from '../../../src/app/panel/chart-labels.ts';

/** Pa in an inch of water. */
const INCH = 249.0889;

const frame: Box = { left: 0, top: 0, right: 272, bottom: 172 };

const meet = (a: Box, b: Box) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

describe('labels beside the points of a chart', () => {
  it('stand above their points where there is room', () => {
    expect(labelsBeside([{ x: 100, y: 80, text: '496' }], [], frame)).toEqual([
      { x: 100, y: 72, anchor: 'middle' },
    ]);
  });

  it('never stand on one another, on a point or on what was there before', () => {
    const points = [
      { x: 150, y: 80, text: '496 cfm' },
      { x: 140, y: 84, text: '388' },
      { x: 128, y: 88, text: '279' },
      { x: 60, y: 100, text: '162' },
    ];
    const names = [{ left: 40, top: 80, right: 70, bottom: 92 }];
    const boxes = labelsBeside(points, names, frame).flatMap((place, i) =>
      place ? [boxOf(points[i]?.text ?? '', place)] : [],
    );
    expect(boxes.length).toBeGreaterThanOrEqual(3);
    const all = [...boxes, ...names];
    for (const [i, a] of all.entries()) for (const b of all.slice(i + 1)) expect(meet(a, b)).toBe(false);
  });

  it('are left out where no place inside the frame is free', () => {
    expect(labelsBeside([{ x: 5, y: 5, text: 'a long label' }], [], { ...frame, right: 10 })).toEqual([null]);
  });
});

describe('the names of curves', () => {
  it('keep their order and stand a line apart where the curves begin close to one another', () => {
    expect(linesApart([40, 42, 100])).toEqual([40, 52, 100]);
  });
});

describe('the marks of an axis', () => {
  it('have the same decimals throughout', () => {
    expect(tickTexts([0, 0.2, 0.4, 1])).toEqual(['0.0', '0.2', '0.4', '1.0']);
  });

  it('have none where whole numbers do', () => {
    expect(tickTexts([0, 200, 400])).toEqual(['0', '200', '400']);
  });
});

describe('the pressures of a column', () => {
  it('have the decimals of the one that needs the most', () => {
    expect(alikePressures([0.25 * INCH, 0.0012 * INCH, null], 'imperial')).toEqual(['0.250', '0.001', '–']);
  });

  it('need none where whole pascals do', () => {
    expect(alikePressures([250, 120], 'metric')).toEqual(['250', '120']);
  });
});
