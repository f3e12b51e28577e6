import { describe, expect, it } from 'vitest';
import { circle, line, polygon } from '../../../src/drawing/stroke.ts';
import { inMillimetres, svgLines, svgOutlines, svgStroke } from '../../../src/drawing/svg-pen.ts';

describe('a path', () => {
  it('is in millimetres with up on the sheet up in the picture', () => {
    expect(svgStroke(line({ u: 1, v: 2 }, { u: 1.5, v: -0.25 }), inMillimetres)).toBe('M1000 -2000L1500 250');
  });

  it('keeps an arc an arc: a quarter turn to the left sweeps against the clock', () => {
    const quarter = { kind: 'arc', centre: { u: 0, v: 0 }, radius: 0.3, start: 0, end: Math.PI / 2 } as const;
    expect(svgStroke(quarter, inMillimetres)).toBe('M300 0A300 300 0 0 0 0 -300');
    expect(svgStroke({ ...quarter, start: Math.PI / 2, end: 0 }, inMillimetres)).toBe(
      'M0 -300A300 300 0 0 1 300 0',
    );
  });

  it('draws a circle as two halves, which one arc cannot', () => {
    const path = svgStroke(circle({ u: 0, v: 0 }, 0.1), inMillimetres);
    expect(path.match(/A/g)).toHaveLength(2);
    expect(path).toMatch(/^M100 0A.*100 0$/);
  });

  it('takes the long way round where the arc does', () => {
    const long = { kind: 'arc', centre: { u: 0, v: 0 }, radius: 1, start: 0, end: 1.5 * Math.PI } as const;
    expect(svgStroke(long, inMillimetres)).toMatch(/A1000 1000 0 1 0/);
  });

  it('closes outlines once, and begins lines anew', () => {
    const square = polygon([
      { u: 0, v: 0 },
      { u: 1, v: 0 },
      { u: 1, v: 1 },
    ]);
    expect(svgOutlines([[square]], inMillimetres).match(/Z/g)).toHaveLength(1);
    const chain = [line({ u: 0, v: 0 }, { u: 1, v: 0 }), line({ u: 1, v: 1 }, { u: 0, v: 1 })];
    expect(svgOutlines([chain], inMillimetres)).toBe('M0 0L1000 0L1000 -1000L0 -1000Z');
    expect(svgLines(chain, inMillimetres).match(/M/g)).toHaveLength(2);
  });
});
