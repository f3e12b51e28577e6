import { bench, describe } from 'vitest';
import { placeLabels } from '../../src/drawing/label-place.ts';
import { labelsOf } from '../../src/drawing/labels.ts';
import { outlineOf } from '../../src/drawing/outline.ts';
import type { Vec3 } from '../../src/graph/document.ts';
import { run } from '../unit/drawing/drawing.ts';

describe.each([
  ['a kitchen’s route', 6],
  ['a route of a thousand legs', 1000],
])('%s on the floor sheet', (_, legs) => {
  const points: Vec3[] = Array.from({ length: legs + 1 }, (__, i) => [
    Math.ceil(i / 2),
    Math.floor(i / 2),
    2,
  ]);
  const { job, route } = run(points, { bend: { kind: 'five-piece', radiusRatio: 1.5 } });
  const outline = outlineOf(route, job, 'floor');

  bench('outlines', () => {
    outlineOf(route, job, 'floor');
  });

  bench('labels', () => {
    const wanted = labelsOf({
      sheet: 'floor',
      route,
      legs: outline.legs,
      values: new Map(outline.legs.map((leg) => [leg.segment.id, 6])),
      by: 'velocity',
      units: 'imperial',
      selection: { nodes: [], segments: [] },
      names: [],
      view: { scale: 100, panX: 50, panY: 700 },
      measure: (text) => text.length * 6.5,
    });
    placeLabels(wanted, { minX: 0, minY: 0, maxX: 700, maxY: 750 }, [], []);
  });
});
