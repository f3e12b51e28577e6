import { describe, expect, it } from 'vitest';
import { createBoard } from '../../../src/app/store.ts';
import { type Asked, type ColumnId, cellOf, columns } from '../../../src/app/table/cells.ts';
import { legEnd } from '../../../src/app/table/extend.ts';
import { gridStep } from '../../../src/app/table/grid-keys.ts';
import { traceRoute } from '../../../src/graph/trace.ts';
import { exampleJob } from './kitchen.ts';

function table() {
  const board = createBoard(exampleJob());
  const rows = () => traceRoute(board.getState().job, board.getState().schemeId);
  const find = (kind: 'node' | 'segment', name: RegExp) => {
    const row = rows().find((each) => each.kind === kind && name.test(each.words));
    if (!row) throw new Error(`no row ${name}`);
    return row;
  };
  const cell = (kind: 'node' | 'segment', name: RegExp, column: ColumnId) =>
    cellOf(board.getState(), find(kind, name), column);
  const take = (asked: Asked | undefined) => {
    if (!asked?.ok) throw new Error(asked?.message ?? 'the cell is not edited so');
    board.dispatch(asked.label, asked.recipe);
  };
  return { board, rows, cell, take };
}

describe('the route table', () => {
  it('has text for each number that the air has in a duct', () => {
    const { cell } = table();
    for (const column of ['length', 'size', 'made', 'flow', 'velocity', 'loss'] as const)
      expect(cell('segment', /to turn 1/, column).text, column).not.toBe('');
  });

  it('changes a length by typing it outright or as a step', () => {
    const { cell, take } = table();
    take(cell('segment', /turn 1 to turn 2/, 'length').typed?.(`9'`));
    expect(cell('segment', /turn 1 to turn 2/, 'length').text).toBe(`9'-0"`);
    take(cell('segment', /turn 1 to turn 2/, 'length').typed?.(`+6"`));
    expect(cell('segment', /turn 1 to turn 2/, 'length').text).toBe(`9'-6"`);
  });

  it('takes a place below 0 for what it is, and a plus for a step', () => {
    const { cell, take } = table();
    take(cell('node', /^turn 2/, 'east').typed?.(`-1'`));
    expect(cell('node', /^turn 2/, 'east').text).toMatch(/^[−-]1'-0"$/);
    take(cell('node', /^turn 2/, 'east').typed?.(`+3'`));
    expect(cell('node', /^turn 2/, 'east').text).toBe(`2'-0"`);
  });

  it('changes size, material, bend, radius and cap', () => {
    const { cell, take } = table();
    take(cell('segment', /to turn 1/, 'size').typed?.('7 in'));
    take(cell('segment', /to turn 1/, 'made').picked?.take('stainless'));
    take(cell('node', /^turn 1/, 'made').picked?.take('smooth'));
    take(cell('node', /^turn 1/, 'size').typed?.('1'));
    take(cell('node', /^the cap/, 'made').picked?.take('open'));
    expect(cell('segment', /to turn 1/, 'size').text).toMatch(/^7/);
    expect(cell('segment', /to turn 1/, 'made').picked?.value).toBe('stainless');
    expect(cell('node', /^turn 1/, 'made').picked?.value).toBe('smooth');
    expect(cell('node', /^turn 1/, 'size').text).toBe('1');
    expect(cell('node', /^the cap/, 'made').picked?.value).toBe('open');
  });

  it('refuses nonsense with a sentence and changes nothing', () => {
    const { cell } = table();
    const asked = cell('segment', /to turn 1/, 'length').typed?.('long');
    expect(asked?.ok).toBe(false);
    expect(asked?.ok === false && asked.message).toMatch(/\.$/);
  });

  it('lets nothing be typed over what is worked out', () => {
    const { board, rows } = table();
    for (const row of rows())
      for (const column of ['place', 'way', 'flow', 'velocity', 'loss'] as const) {
        const { typed, picked } = cellOf(board.getState(), row, column);
        expect([typed, picked]).toEqual([undefined, undefined]);
      }
  });
});

describe('drawing from a row', () => {
  it('goes a length in the direction that is named', () => {
    const { board, rows } = table();
    const { route } = board.getState().solution;
    const last = rows().at(-1);
    const at = route.nodes.get(last?.id ?? '')?.at;
    if (!last || !at) throw new Error('the example has an end');
    expect(legEnd(route, last.id, 'up', 2)).toEqual([at[0], at[1], at[2] + 2]);
    expect(legEnd(route, last.id, 'southwest', Math.SQRT2)).toEqual([
      expect.closeTo(at[0] - 1, 12),
      expect.closeTo(at[1] - 1, 12),
      at[2],
    ]);
  });

  it('goes straight on as the duct arrives, and not where none does', () => {
    const { board, rows } = table();
    const { route } = board.getState().solution;
    const rowsNow = rows();
    const [first, last] = [rowsNow[0], rowsNow.at(-1)];
    const leg = [...route.segments.values()].find(({ to }) => to === last?.id);
    const at = route.nodes.get(last?.id ?? '')?.at;
    expect(legEnd(route, last?.id ?? '', 'on', 1)).toEqual(
      at?.map((n, axis) => expect.closeTo(n + (leg?.direction[axis] ?? 0), 12)),
    );
    expect(legEnd(route, first?.id ?? '', 'on', 1)).toBeNull();
  });
});

describe('the keys of a table', () => {
  const at = { row: 2, column: 3 };
  const step = (key: string, mod = false) => gridStep(key, mod, at, 5, columns.length);

  it('move by one, and stay within', () => {
    expect(step('ArrowUp')).toEqual({ row: 1, column: 3 });
    expect(step('ArrowRight')).toEqual({ row: 2, column: 4 });
    expect(gridStep('ArrowUp', false, { row: 0, column: 0 }, 5, 4)).toEqual({ row: 0, column: 0 });
    expect(step('PageDown')).toEqual({ row: 4, column: 3 });
  });

  it('go to the ends of a row, and of the table with Control', () => {
    expect(step('Home')).toEqual({ row: 2, column: 0 });
    expect(step('End', true)).toEqual({ row: 4, column: columns.length - 1 });
  });

  it('are no others', () => {
    expect(step('a')).toBeNull();
  });
});
