import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawDucts, inView } from '../../../src/canvas/draw-ducts.ts';
import type { Pen } from '../../../src/canvas/pen.ts';
import type { Outline } from '../../../src/drawing/outline.ts';
import { palettes } from '../../../src/drawing/palette.ts';
import { type Drawable, pointsOf, type Stroke } from '../../../src/drawing/stroke.ts';
import type { Vec3 } from '../../../src/graph/document.ts';
import type { SheetPoint } from '../../../src/graph/sheet.ts';
import { levelTurn, run, upAndOut } from './drawing.ts';

const smooth = { kind: 'smooth', radiusRatio: 1.5 };

function only(outline: Outline, kind: Drawable['kind'], id?: string): Drawable {
  const found = outline.drawables.filter((d) => d.kind === kind && (id === undefined || d.id === id));
  expect(found, `${kind} ${id ?? ''}`).toHaveLength(1);
  return found[0] as Drawable;
}

function arcs(strokes: readonly Stroke[]) {
  return strokes.filter((stroke) => stroke.kind === 'arc');
}

function ends(stroke: Stroke | undefined): [SheetPoint, SheetPoint] {
  const points = stroke ? pointsOf(stroke) : [];
  return [points[0] as SheetPoint, points[points.length - 1] as SheetPoint];
}

function near(a: SheetPoint, b: SheetPoint): void {
  expect(a.u).toBeCloseTo(b.u, 9);
  expect(a.v).toBeCloseTo(b.v, 9);
}

describe('a bend in the plane of the sheet', () => {
  const drawn = run(levelTurn, { bend: smooth });
  const bend = only(drawn.on('floor'), 'bend');

  it('has its inner and outer wall as arcs of the true radius', () => {
    expect(arcs(bend.walls).map((arc) => arc.radius)).toEqual([
      expect.closeTo(0.3 + 0.1, 12),
      expect.closeTo(0.3 - 0.1, 12),
    ]);
  });

  it('has its centre line on the radius that the route infers', () => {
    const [centre] = arcs(bend.centre);
    expect(centre?.radius).toBeCloseTo(drawn.route.nodes.get('n1')?.bend?.radius as number, 12);
  });

  it('runs from tangent to tangent, where its legs begin and end', () => {
    const [from, to] = ends(bend.centre[0]);
    near(from, { u: 1.7, v: 0 });
    near(to, { u: 2, v: 0.3 });
    near(ends(only(drawn.on('floor'), 'leg', 'd0').centre[0])[1], from);
    near(ends(only(drawn.on('floor'), 'leg', 'd1').centre[0])[0], to);
  });

  it('has its walls meet the walls of its legs', () => {
    const walls = (id: string) =>
      only(drawn.on('floor'), 'leg', id).walls.flatMap((wall) => [...pointsOf(wall)]);
    for (const arc of bend.walls)
      for (const [end, leg] of [
        [ends(arc)[0], 'd0'],
        [ends(arc)[1], 'd1'],
      ] as const) {
        const gaps = walls(leg).map((p) => Math.hypot(p.u - end.u, p.v - end.v));
        expect(Math.min(...gaps)).toBeLessThan(1e-9);
      }
  });

  it('turns by the angle between its legs, whichever way it turns', () => {
    fc.assert(
      fc.property(fc.double({ min: 5, max: 150, noNaN: true }), fc.boolean(), (degrees, left) => {
        const turn = ((left ? 1 : -1) * degrees * Math.PI) / 180;
        const points: Vec3[] = [
          [0, 0, 2],
          [4, 0, 2],
          [4 + 4 * Math.cos(turn), 4 * Math.sin(turn), 2],
        ];
        const [arc] = arcs(only(run(points, { bend: smooth }).on('floor'), 'bend').centre);
        expect((arc?.end ?? 0) - (arc?.start ?? 0)).toBeCloseTo(turn, 9);
      }),
      { numRuns: 40 },
    );
  });

  it('keeps an inner wall of no radius out of the drawing where the throat is sharp', () => {
    const sharp = only(run(levelTurn, { bend: { kind: 'smooth', radiusRatio: 0.5 } }).on('floor'), 'bend');
    expect(arcs(sharp.walls).map((arc) => arc.radius)).toEqual([expect.closeTo(0.2, 12)]);
  });
});

describe('a bend out of the plane of the sheet', () => {
  const slanting: Vec3[] = [
    [0, 0, 2],
    [2, 0, 2],
    [3, 1, 3],
  ];

  it('begins and ends at the tangents as the sheet projects them', () => {
    const drawn = run(slanting, { bend: smooth });
    const tangent = drawn.route.nodes.get('n1')?.bend?.tangent as number;
    const [from, to] = ends(only(drawn.on('floor'), 'bend').centre[0]);
    near(from, { u: 2 - tangent, v: 0 });
    near(to, { u: 2 + tangent / Math.sqrt(3), v: tangent / Math.sqrt(3) });
  });

  it('keeps its walls half a diameter from the centre line', () => {
    const bend = only(run(slanting, { bend: smooth }).on('floor'), 'bend');
    const middle = fine(pointsOf(bend.centre[0] as Stroke));
    for (const wall of bend.walls)
      for (const p of pointsOf(wall)) {
        const away = Math.min(...middle.map((m) => Math.hypot(p.u - m.u, p.v - m.v)));
        expect(away).toBeGreaterThan(0.099);
        expect(away).toBeLessThan(0.101);
      }
  });

  it('is drawn from its end-on leg to its tangent when a riser turns level', () => {
    const bend = only(run(upAndOut, { bend: smooth }).on('floor'), 'bend');
    const [from, to] = ends(bend.centre[0]);
    near(from, { u: 1, v: 0 });
    near(to, { u: 1, v: 0.3 });
  });
});

function fine(points: readonly SheetPoint[]): SheetPoint[] {
  return points.slice(1).flatMap((b, i) => {
    const a = points[i] as SheetPoint;
    return Array.from({ length: 20 }, (_, k) => ({
      u: a.u + ((b.u - a.u) * k) / 20,
      v: a.v + ((b.v - a.v) * k) / 20,
    }));
  });
}

describe('a gored bend', () => {
  it.each([
    ['three-piece', 2],
    ['four-piece', 3],
    ['five-piece', 4],
  ])('as %s shows %d seams between its pieces', (kind, seams) => {
    const bend = only(run(levelTurn, { bend: { kind, radiusRatio: 1.5 } }).on('floor'), 'bend');
    const joints = 2;
    expect(bend.fine).toHaveLength(seams + joints);
  });

  it('touches the arc of its radius at the middle of each gore', () => {
    const bend = only(run(levelTurn, { bend: { kind: 'five-piece', radiusRatio: 1.5 } }).on('floor'), 'bend');
    const corners = pointsOf(bend.centre[0] as Stroke);
    const middle = corners.slice(1, -2).map((a, i) => {
      const b = corners[i + 2] as SheetPoint;
      return Math.hypot((a.u + b.u) / 2 - 1.7, (a.v + b.v) / 2 - 0.3);
    });
    expect(middle).toHaveLength(3);
    for (const radius of middle) expect(radius).toBeCloseTo(0.3, 9);
  });
});

describe('a mitre', () => {
  it('has its legs meet on the line that halves the turn', () => {
    const outline = run(levelTurn, { bend: { kind: 'mitred', radiusRatio: 0 } }).on('floor');
    const [a, b] = ends(only(outline, 'joint').walls[0]);
    const corners = [a, b].sort((p, q) => p.u - q.u);
    near(corners[0] as SheetPoint, { u: 1.9, v: 0.1 });
    near(corners[1] as SheetPoint, { u: 2.1, v: -0.1 });
  });
});

describe('a vertical leg', () => {
  it('shows on the floor sheet as a riser of the duct’s size where it stands', () => {
    const riser = only(run(upAndOut).on('floor'), 'riser', 'd0');
    const [rim] = arcs(riser.walls);
    expect(rim?.radius).toBeCloseTo(0.1, 12);
    near(rim?.centre as SheetPoint, { u: 1, v: 0 });
  });

  it('is half inked where the air rises and crossed where it falls', () => {
    const up = only(run(upAndOut).on('floor'), 'riser', 'd0');
    const fall: Vec3[] = [
      [0, 0, 2.5],
      [2, 0, 2.5],
      [2, 0, 1],
    ];
    const down = only(run(fall).on('floor'), 'riser', 'd1');
    expect([up.solid.length, down.solid.length]).toEqual([1, 0]);
    expect([up.fine.length, down.fine.length]).toEqual([1, 2]);
  });

  it('shows on the sections as duct from the side', () => {
    for (const sheet of ['section-x', 'section-y'] as const)
      expect(only(run(upAndOut).on(sheet), 'leg', 'd0').walls).toHaveLength(2);
  });

  it('lies over the level duct that it turns into', () => {
    const { drawables } = run(upAndOut).on('floor');
    const at = (kind: Drawable['kind']) => drawables.findIndex((d) => d.kind === kind);
    expect(at('riser')).toBeGreaterThan(at('bend'));
    expect(at('riser')).toBeGreaterThan(at('leg'));
  });

  it('of rectangular duct shows both of its sides', () => {
    const duct = { shape: 'rectangular', width: 0.25, height: 0.08 } as const;
    const { bounds } = only(run(upAndOut, { segments: { 0: { duct }, 1: { duct } } }).on('floor'), 'riser');
    expect(bounds.maxU - bounds.minU).toBeCloseTo(0.25, 9);
    expect(bounds.maxV - bounds.minV).toBeCloseTo(0.08, 9);
  });
});

describe('rectangular duct', () => {
  const duct = { shape: 'rectangular', width: 0.3, height: 0.1 } as const;
  const drawn = run(
    [
      [0, 0, 2],
      [3, 0, 2],
    ],
    { segments: { 0: { duct } } },
  );

  it.each([
    ['floor', 0.3],
    ['section-x', 0.1],
  ] as const)('on the %s sheet covers %d m across', (sheet, across) => {
    const [left, right] = only(drawn.on(sheet), 'leg').walls;
    expect(Math.abs(ends(left)[0].v - ends(right)[0].v)).toBeCloseTo(across, 9);
  });
});

describe('a change of size', () => {
  it('is a taper from the one size to the other over the length of its cone', () => {
    const drawn = run(
      [
        [0, 0, 2],
        [2, 0, 2],
        [4, 0, 2],
      ],
      { segments: { 1: { duct: { shape: 'round', diameter: 0.15 } } } },
    );
    const taper = only(drawn.on('floor'), 'transition');
    const length = drawn.route.nodes.get('n1')?.transition?.length as number;
    const [from, to] = ends(taper.walls[0]);
    expect(to.u - from.u).toBeCloseTo(length, 9);
    expect([Math.abs(from.v), Math.abs(to.v)]).toEqual([expect.closeTo(0.1, 9), expect.closeTo(0.075, 9)]);
  });
});

describe('every leg', () => {
  const coordinate = fc.integer({ min: -40, max: 40 }).map((n) => n / 10);
  const points = fc.uniqueArray(fc.tuple(coordinate, coordinate, coordinate), {
    minLength: 2,
    maxLength: 7,
    selector: (p) => p.join(),
  });

  it('has finite bounds that hold its centre line, however the route runs', () => {
    fc.assert(
      fc.property(points, fc.constantFrom('floor', 'section-x', 'section-y'), (list, sheet) => {
        for (const { kind, bounds, centre } of run(list).on(sheet).drawables) {
          expect(Object.values(bounds).every(Number.isFinite), kind).toBe(true);
          for (const { u, v } of centre.flatMap((stroke) => [...pointsOf(stroke)])) {
            expect(u).toBeGreaterThanOrEqual(bounds.minU - 1e-9);
            expect(v).toBeLessThanOrEqual(bounds.maxV + 1e-9);
          }
        }
      }),
      { numRuns: 60 },
    );
  });
});

describe('drawing', () => {
  const stairs: Vec3[] = Array.from({ length: 40 }, (_, i) => [Math.ceil(i / 2), Math.floor(i / 2), 2]);
  const outline = run(stairs, { bend: smooth }).on('floor');
  const { drawables } = outline;
  const size = { width: 400, height: 400 };
  const close = { scale: 100, panX: -1000, panY: 1400 };
  const paint = { palette: palettes.light, colours: new Map<string, string>() };

  it('draws only what is in view', () => {
    const shown = inView(drawables, close, size);
    for (const { bounds } of shown) {
      expect(bounds.maxU * 100 - 1000).toBeGreaterThanOrEqual(-2);
      expect(bounds.minU * 100 - 1000).toBeLessThanOrEqual(402);
    }
    const pen = countingPen();
    expect(drawDucts(pen.pen, outline, paint, close, size)).toBe(shown.length);
    expect(shown.length).toBeGreaterThan(5);
    expect(shown.length).toBeLessThan(drawables.length / 3);
  });

  it('fills each thing in view once for each of its closed paths, and each flow arrow once', () => {
    const far = { scale: 36, panX: 20, panY: 780 };
    const size = { width: 800, height: 800 };
    const pen = countingPen();
    const drawn = drawDucts(pen.pen, outline, paint, far, size);
    expect(drawn).toBe(drawables.length);
    const paths = drawables.reduce((n, d) => n + d.fill.length + d.solid.length, 0);
    expect(pen.fills()).toBe(paths);
  });

  it('draws nothing where nothing is in view', () => {
    const pen = countingPen();
    expect(drawDucts(pen.pen, outline, paint, { scale: 100, panX: 5000, panY: 0 }, size)).toBe(0);
    expect(pen.fills()).toBe(0);
  });
});

/** A pen that draws nowhere and counts the fills. */
function countingPen(): { readonly pen: Pen; fills(): number } {
  let fills = 0;
  const target: Record<string, unknown> = { fill: () => (fills += 1) };
  const pen = new Proxy(target, {
    get: (of, name) => of[String(name)] ?? (() => undefined),
  });
  return { pen: pen as unknown as Pen, fills: () => fills };
}
