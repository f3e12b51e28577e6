import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nothing, type Selection } from '../../../src/canvas/board.ts';
import {
  type Box,
  boxAt,
  leftOut,
  type Placed,
  placeLabels,
  type Wanted,
} from '../../../src/drawing/label-place.ts';
import { labelsOf, sectionText } from '../../../src/drawing/labels.ts';
import { busyPlaces } from '../../../src/drawing/names.ts';
import { MIN_TEXT } from '../../../src/drawing/palette.ts';
import { boundsOf, fit as fitted } from '../../../src/drawing/viewport.ts';
import type { Vec3 } from '../../../src/graph/document.ts';
import { project, type SheetId } from '../../../src/graph/sheet.ts';
import { type Drawn, levelTurn, run, upAndOut } from './drawing.ts';

const size = { width: 640, height: 520 };
const area: Box = { minX: 26, minY: 26, maxX: 636, maxY: 516 };

function placed(drawn: Drawn, sheet: SheetId, selection: Selection = nothing, zoom = 1): Placed[] {
  const points = [...drawn.route.nodes.values()].map((node) => project(node.at, sheet));
  const bounds = boundsOf(points, 0.5) ?? { minU: 0, minV: 0, maxU: 1, maxV: 1 };
  const whole = fitted(bounds, size, 60);
  const wanted = labelsOf({
    sheet,
    route: drawn.route,
    legs: drawn.on(sheet).legs,
    values: new Map([...drawn.route.segments.keys()].map((id) => [id, 6.1])),
    by: 'velocity',
    units: 'metric',
    selection,
    names: [],
    view: { ...whole, scale: whole.scale * zoom },
    measure: (text) => text.length * MIN_TEXT * 0.6,
  });
  return placeLabels(wanted, area, [], []);
}

function texts(labels: readonly Placed[], kind: Placed['kind']): string[] {
  return labels.filter((label) => label.kind === kind).map((label) => label.text);
}

function overlap(a: Box, b: Box): boolean {
  return a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY;
}

describe('labels', () => {
  it('dimension each leg from centre line to centre line', () => {
    expect(texts(placed(run(levelTurn), 'floor'), 'dimension')).toEqual(['2000 mm', '2000 mm']);
  });

  it('say so where a length is true but does not show true', () => {
    const sloped: Vec3[] = [
      [0, 0, 1],
      [3, 0, 5],
    ];
    expect(texts(placed(run(sloped), 'floor'), 'dimension')).toEqual(['5000 mm true']);
    expect(texts(placed(run(sloped), 'section-x'), 'dimension')).toEqual(['5000 mm']);
  });

  it('give a riser the height that it climbs', () => {
    expect(texts(placed(run(upAndOut), 'floor'), 'riser')).toEqual(['up 800 mm']);
  });

  it('name the way that a leg runs along the sight of a section', () => {
    expect(texts(placed(run(upAndOut), 'section-x'), 'riser')).toEqual(['north 3000 mm']);
  });

  it('show the angle of a turn on the sheet that it lies in', () => {
    expect(texts(placed(run(levelTurn), 'floor'), 'turn')).toEqual(['90°']);
    expect(texts(placed(run(levelTurn), 'section-x'), 'turn')).toEqual([]);
  });

  it('tag the size once for each stretch of the same duct', () => {
    const small = { duct: { shape: 'round', diameter: 0.15 } } as const;
    const stairs: Vec3[] = [
      [0, 0, 2],
      [2, 0, 2],
      [2, 2, 2],
      [4, 2, 2],
      [4, 4, 2],
    ];
    const labels = placed(run(stairs, { segments: { 2: small, 3: small } }), 'floor');
    expect(texts(labels, 'size').sort()).toEqual(['150 mm dia', '200 mm dia']);
  });

  it('carry the value of every leg, so that colour never stands alone', () => {
    expect(texts(placed(run(levelTurn), 'floor'), 'value')).toEqual(['6.1 m/s', '6.1 m/s']);
  });

  it('give both sides of rectangular and oval duct', () => {
    expect(sectionText({ shape: 'rectangular', width: 0.254, height: 0.0825 }, 'imperial')).toBe(
      '10" × 3 1/4"',
    );
    expect(sectionText({ shape: 'oval', width: 0.3, height: 0.1 }, 'metric')).toBe('300 mm × 100 mm oval');
  });

  it('lead to a value from afar where there is no room at the duct', () => {
    const labels = placed(run(levelTurn), 'floor', nothing, 0.12);
    const values = labels.filter(({ kind }) => kind === 'value');
    expect(values.length).toBeGreaterThan(0);
    for (const { text, leader } of values) {
      expect(text).toBe('6.1 m/s');
      if (leader) expect(Math.hypot(leader[0].x - leader[1].x, leader[0].y - leader[1].y)).toBeLessThan(60);
    }
  });

  const step = fc.tuple(fc.constantFrom(0, 1, 2), fc.constantFrom(-1, 1), fc.integer({ min: 3, max: 30 }));
  const routes = fc.array(step, { minLength: 1, maxLength: 12 }).map((steps) => {
    const points: Vec3[] = [[0, 0, 2]];
    for (const [axis, sign, tenths] of steps) {
      const next: Vec3 = [...(points[points.length - 1] as Vec3)];
      next[axis] = (next[axis] as number) + (sign * tenths) / 10;
      points.push(next);
    }
    return run(points);
  });
  const sheets = fc.constantFrom<SheetId>('floor', 'section-x', 'section-y');
  const zooms = fc.double({ min: 0.3, max: 4, noNaN: true });

  it('never overlap each other nor run off the sheet', () => {
    fc.assert(
      fc.property(routes, sheets, zooms, (drawn, sheet, zoom) => {
        const labels = placed(drawn, sheet, nothing, zoom);
        for (const [i, a] of labels.entries()) {
          expect(a.box.minX).toBeGreaterThanOrEqual(area.minX);
          expect(a.box.minY).toBeGreaterThanOrEqual(area.minY);
          expect(a.box.maxX).toBeLessThanOrEqual(area.maxX);
          expect(a.box.maxY).toBeLessThanOrEqual(area.maxY);
          for (const b of labels.slice(i + 1))
            expect(overlap(a.box, b.box), `${a.text} ${b.text}`).toBe(false);
        }
      }),
      { numRuns: 150 },
    );
  });

  it('stand on whole pixels', () => {
    fc.assert(
      fc.property(routes, sheets, (drawn, sheet) => {
        for (const { box } of placed(drawn, sheet)) {
          expect(Number.isInteger(box.minX)).toBe(true);
          expect(Number.isInteger(box.minY)).toBe(true);
        }
      }),
      { numRuns: 30 },
    );
  });
});

describe('placing labels', () => {
  const label = (id: string, priority: number, ...boxes: Box[]): Wanted => ({
    kind: 'value',
    id,
    priority,
    candidates: boxes.map((box, i) => ({ box, text: id, cost: i })),
  });
  const here = boxAt({ x: 100, y: 100 }, 40, 14);
  const there = boxAt({ x: 200, y: 100 }, 40, 14);

  it('hides the lesser of two labels that want one place', () => {
    const shown = placeLabels([label('less', 1, here), label('more', 2, here)], area, [], []);
    expect(shown.map(({ id }) => id)).toEqual(['more']);
  });

  it('moves a label to its next place before it hides it', () => {
    const shown = placeLabels([label('b', 1, here, there), label('a', 2, here)], area, [], []);
    expect(shown.find(({ id }) => id === 'b')?.box).toEqual(there);
  });

  it('keeps clear of what must stay visible', () => {
    expect(placeLabels([label('a', 1, here)], area, [here], [])).toEqual([]);
  });

  it('would rather stand beside duct than on it', () => {
    const [shown] = placeLabels([label('a', 1, here, there)], area, [], [here]);
    expect(shown?.box).toEqual(there);
  });

  it('never covers what is solid', () => {
    const [shown] = placeLabels([label('a', 1, here, there)], area, [], [{ ...here, solid: true }]);
    expect(shown?.box).toEqual(there);
    expect(placeLabels([label('a', 1, here)], area, [], [{ ...here, solid: true }])).toEqual([]);
  });

  const dimension = (from: number, to: number) => ({
    from: { x: from, y: 100 },
    to: { x: to, y: 100 },
    extensions: [
      [
        { x: to, y: 90 },
        { x: to, y: 140 },
      ],
    ] as const,
  });

  it('covers neither a dimension line nor a line that leads to one', () => {
    const far: Box = boxAt({ x: 400, y: 100 }, 40, 14);
    const measured: Wanted = {
      kind: 'dimension',
      id: 'length',
      priority: 2,
      candidates: [{ box: far, text: 'length', cost: 0, dimension: dimension(60, 220) }],
    };
    expect(placeLabels([measured, label('a', 1, here)], area, [], []).map(({ id }) => id)).toEqual([
      'length',
    ]);
    const low = boxAt({ x: 220, y: 132 }, 40, 14);
    expect(placeLabels([measured, label('a', 1, low)], area, [], []).map(({ id }) => id)).toEqual(['length']);
  });

  it('lets two dimensions of a chain meet at their ends', () => {
    const chain = [60, 160].map(
      (from, i): Wanted => ({
        kind: 'dimension',
        id: `d${i}`,
        priority: 2,
        candidates: [
          {
            box: boxAt({ x: from + 50, y: 100 }, 30, 14),
            text: '',
            cost: 0,
            dimension: dimension(from, from + 100),
          },
        ],
      }),
    );
    expect(placeLabels(chain, area, [], [])).toHaveLength(2);
  });

  it('draws no leader through a label', () => {
    const led: Wanted = {
      kind: 'value',
      id: 'led',
      priority: 1,
      candidates: [
        {
          box: there,
          text: 'led',
          cost: 0,
          leader: [
            { x: 60, y: 100 },
            { x: 178, y: 100 },
          ],
        },
      ],
    };
    expect(placeLabels([led], area, [], [])).toHaveLength(1);
    expect(placeLabels([led, label('a', 2, here)], area, [], []).map(({ id }) => id)).toEqual(['a']);
  });

  it('counts what found no room though it belongs into view', () => {
    const wanted = [
      label('more', 2, here),
      label('less', 1, here),
      label('away', 1, boxAt({ x: 900, y: 9 }, 9, 9)),
    ];
    const shown = placeLabels(wanted, area, [], []);
    expect(leftOut(wanted, shown, ['value'], area)).toBe(1);
    expect(leftOut(wanted, shown, ['riser'], area)).toBe(0);
  });

  it('leaves the corner that a bend cuts off to labels, and no place on the bend', () => {
    const drawn = run(levelTurn, { bend: { kind: 'smooth', radiusRatio: 1.5 } });
    const view = { scale: 200, panX: 0, panY: 500 };
    const busy = busyPlaces({ exits: [], blocks: [] }, drawn.on('floor').drawables, 'floor', view);
    const solid = busy.filter((each) => each.solid);
    const at = (u: number, v: number) => boxAt({ x: u * 200, y: 500 - v * 200 }, 2, 2);
    const meets = (box: Box) => solid.some((each) => overlap(box, each));
    const diagonal = 0.3 * (1 - Math.SQRT1_2);
    expect(meets(at(2 - diagonal, diagonal))).toBe(true);
    expect(meets(at(2.05, -0.05))).toBe(false);
  });

  it('leaves a shy label out rather than cover anything', () => {
    const shy = { ...label('a', 1, here), shy: true };
    expect(placeLabels([shy], area, [], [here])).toEqual([]);
    expect(placeLabels([shy], area, [], [there])).toHaveLength(1);
  });
});
