import { expect, test } from 'vitest';
import { dimensionChain } from '../../../src/graph/dimension-chain.ts';
import type { Vec3 } from '../../../src/graph/document.ts';

const node = (id: string, x: number) => ({ id, at: [x, 7, 2] as Vec3 });
const block = (id: string, from: number, to: number) => ({
  id,
  min: [from, 0, 0] as Vec3,
  max: [to, 1, 1] as Vec3,
});

test('a chain runs through nodes and the faces of blocks in order, and its spans add up to its total', () => {
  const chain = dimensionChain([node('n2', 3), node('n1', 1)], [block('b1', 0, 2.5)], 'floor', 'u');
  expect(chain.ticks.map(({ at }) => at)).toEqual([0, 1, 2.5, 3]);
  expect(chain.spans.map(({ length }) => length)).toEqual([1, 1.5, 0.5]);
  expect(chain.total).toBe(3);
});

test('it goes along the axis of the sheet that it is on', () => {
  const { ticks } = dimensionChain([node('n1', 1)], [block('b1', 0, 2)], 'section-y', 'v');
  expect(ticks.map(({ at }) => at)).toEqual([0, 1, 2]);
  expect(ticks.at(-1)?.sources).toEqual([{ kind: 'node', id: 'n1' }]);
});

test('places too near to tell apart share a tick, and the node says where it is', () => {
  const { ticks } = dimensionChain([node('n1', 1.002)], [block('b1', 0, 1)], 'floor', 'u');
  expect(ticks).toEqual([
    { at: 0, sources: [{ kind: 'block', id: 'b1', face: 'low' }] },
    {
      at: 1.002,
      sources: [
        { kind: 'node', id: 'n1' },
        { kind: 'block', id: 'b1', face: 'high' },
      ],
    },
  ]);
});

test('a long row of near places does not run together into one', () => {
  const row = Array.from({ length: 10 }, (_, i) => node(`n${i}`, i * 0.002));
  const { ticks } = dimensionChain(row, [], 'floor', 'u');
  expect(ticks).toHaveLength(5);
  expect(ticks.flatMap(({ sources }) => sources)).toHaveLength(10);
});

test('one place or none has no spans', () => {
  expect(dimensionChain([node('n1', 1)], [], 'floor', 'u')).toMatchObject({ spans: [], total: 0 });
  expect(dimensionChain([], [], 'floor', 'u')).toMatchObject({ ticks: [], spans: [], total: 0 });
});
