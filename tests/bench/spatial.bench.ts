import { bench, describe } from 'vitest';
import type { Scheme } from '../../src/graph/document.ts';
import { snap } from '../../src/graph/snap.ts';
import { buildSpatialIndex, hitTest } from '../../src/graph/spatial.ts';

/** A zigzag of legs of 0.4 m in rows, with risers among them. */
function zigzag(segments: number): Scheme {
  const perRow = 200;
  const nodes: Scheme['nodes'] = Array.from({ length: segments + 1 }, (_, i) => {
    const row = Math.floor(i / perRow);
    const column = i % perRow;
    return { id: `n${i}`, at: [column * 0.4, row * 0.6 + (i % 2) * 0.3, 2 + (i % 3) * 0.2], role: 'turn' };
  });
  const links: Scheme['segments'] = Array.from({ length: segments }, (_, i) => ({
    id: `d${i}`,
    from: `n${i}`,
    to: `n${i + 1}`,
  }));
  const defaults: Scheme['defaults'] = { duct: { shape: 'round', diameter: 0.2032 }, material: 'galvanized' };
  return { id: 's1', name: 'Zigzag', defaults, nodes, segments: links };
}

for (const count of [50, 1000, 20_000])
  describe(`${count} segments`, () => {
    const scheme = zigzag(count);
    const index = buildSpatialIndex(scheme, 'floor');
    const point = { u: 3.21, v: 0.17 };
    bench('build the index of a sheet', () => {
      buildSpatialIndex(scheme, 'floor');
    });
    bench('hit test', () => {
      hitTest(index, point, 0.05);
    });
    bench('snap', () => {
      snap({
        index,
        point,
        tolerance: 0.05,
        workingDepth: 2.3,
        from: [2, 0, 2.3],
        previous: [2, -1, 2.3],
        gridStep: 0.0254,
        units: 'imperial',
      });
    });
  });
