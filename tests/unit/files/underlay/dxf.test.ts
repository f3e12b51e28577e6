import DxfParser from 'dxf-parser';
import { describe, expect, it } from 'vitest';
import { drawDxf } from '../../../../src/files/underlay/dxf.ts';

type Code = string | number;

const parse = (text: string) => new DxfParser().parseSync(text);

function dxf(
  entities: readonly Code[],
  header: readonly Code[] = [9, '$INSUNITS', 70, 4],
  blocks: readonly Code[] = [],
) {
  const section = (name: string, codes: readonly Code[]) => [0, 'SECTION', 2, name, ...codes, 0, 'ENDSEC'];
  return [
    ...section('HEADER', header),
    ...section('BLOCKS', blocks),
    ...section('ENTITIES', entities),
    0,
    'EOF',
  ].join('\n');
}

const line = (x1: number, y1: number, x2: number, y2: number): Code[] => [
  ...[0, 'LINE', 8, '0', 10, x1, 20, y1, 30, 0, 11, x2, 21, y2, 31, 0],
];

/** The points of each chain, back in the drawing's units from the corner of a drawing `wide` across. */
function chains(text: string, wide: number): [number, number][][] {
  const { svg, size } = drawDxf(text, parse);
  const perPixel = (wide * 1.02) / size[0];
  const path = / d="([^"]*)"/.exec(svg)?.[1] ?? '';
  return path
    .split('M')
    .slice(1)
    .map((chain) =>
      chain.split(/[L ]/).reduce<[number, number][]>((points, value, i, all) => {
        if (i % 2 === 0)
          points.push([
            Number(value) * perPixel - wide * 0.01,
            (size[1] - Number(all[i + 1])) * perPixel - wide * 0.01,
          ]);
        return points;
      }, []),
    );
}

const near = (x: number, y: number) => [expect.closeTo(x, 0), expect.closeTo(y, 0)];

describe('a drawing in DXF', () => {
  it.each([
    [1, 0.0254],
    [2, 0.3048],
    [4, 0.001],
    [5, 0.01],
    [6, 1],
  ])('in unit %i has its real scale', (code, metres) => {
    const { size, scale, assumed } = drawDxf(dxf(line(0, 0, 1000, 500), [9, '$INSUNITS', 70, code]), parse);
    expect(size[0]).toBe(4000);
    expect((size[0] * scale) / 1.02).toBeCloseTo(1000 * metres, 9);
    expect(assumed).toBeNull();
  });

  it('that names no unit says what was assumed', () => {
    const text = dxf(line(0, 0, 1000, 500), [9, '$INSUNITS', 70, 0, 9, '$MEASUREMENT', 70, 1]);
    expect(drawDxf(text, parse).assumed).toBe('millimetres');
    expect(drawDxf(dxf(line(0, 0, 9, 9), [9, '$MEASUREMENT', 70, 0]), parse).assumed).toBe('inches');
  });

  it('has its lines where they are, y up', () => {
    expect(chains(dxf([...line(0, 0, 1000, 0), ...line(0, 0, 0, 400)]), 1000)).toEqual([
      [near(0, 0), near(1000, 0)],
      [near(0, 0), near(0, 400)],
    ]);
  });

  it('closes a polyline, and bends it where it bulges', () => {
    const square = [0, 'LWPOLYLINE', 8, '0', 90, 3, 70, 1, 10, 0, 20, 0, 10, 1000, 20, 0, 10, 1000, 20, 800];
    expect(chains(dxf(square), 1000)[0]).toEqual([near(0, 0), near(1000, 0), near(1000, 800), near(0, 0)]);
    // A bulge of 1 is half a circle: from (0, 500) to (1000, 500) by way of its lowest point (500, 0).
    const half = [0, 'LWPOLYLINE', 8, '0', 90, 2, 70, 0, 10, 0, 20, 500, 42, 1, 10, 1000, 20, 500];
    const points = chains(dxf(half), 1000)[0] ?? [];
    expect(points[0]).toEqual(near(0, 500));
    expect(points[Math.floor(points.length / 2)]).toEqual(near(500, 0));
    for (const [x, y] of points) expect(Math.hypot(x - 500, y - 500)).toBeCloseTo(500, -0.5);
  });

  it('draws arcs counter-clockwise from their start, and whole circles', () => {
    const arc = [0, 'ARC', 8, '0', 10, 0, 20, 0, 40, 1000, 50, 0, 51, 90];
    const points = chains(dxf(arc), 1000)[0] ?? [];
    expect([points[0], points.at(-1)]).toEqual([near(1000, 0), near(0, 1000)]);
    const circle = chains(dxf([0, 'CIRCLE', 8, '0', 10, 500, 20, 500, 40, 500]), 1000)[0] ?? [];
    expect(circle[0]).toEqual(circle.at(-1));
    expect(Math.max(...circle.map(([, y]) => y))).toBeCloseTo(1000, 0);
  });

  it('puts blocks in their places, turned and scaled', () => {
    const block = [
      0,
      'BLOCK',
      8,
      '0',
      2,
      'DOOR',
      70,
      0,
      10,
      0,
      20,
      0,
      30,
      0,
      ...line(0, 0, 10, 0),
      0,
      'ENDBLK',
    ];
    const insert = [0, 'INSERT', 8, '0', 2, 'DOOR', 10, 500, 20, 0, 41, 20, 42, 20, 50, 90];
    const text = dxf([...line(0, 0, 1000, 0), ...insert], [9, '$INSUNITS', 70, 4], block);
    expect(chains(text, 1000)[1]).toEqual([near(500, 0), near(500, 200)]);
  });

  it('writes its words as words, whatever is in them', () => {
    const { svg } = drawDxf(
      dxf([...line(0, 0, 100, 100), 0, 'TEXT', 8, '0', 10, 5, 20, 5, 40, 9, 1, '<script> & %%c8', 50, 30]),
      parse,
    );
    expect(svg).toContain('rotate(-30)');
    expect(svg).toContain('&lt;script&gt; &amp; Ø8');
  });

  it.each([
    ['is binary', 'AutoCAD Binary DXF\r\n\u001a', /binary DXF.*ASCII/],
    ['is cut off', '0\nSECTION\n2\nENTITIES\n0\nLINE\n8', /cannot be read|no lines|no drawing/],
    ['holds no lines', dxf([0, 'TEXT', 8, '0', 10, 5, 20, 5, 40, 9, 1, 'x']), /no lines/],
  ])('that %s is refused', (_, text, why) => {
    expect(() => drawDxf(text, parse)).toThrow(why);
  });
});
