import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import {
  bends,
  bendTables,
  type CatalogueRow,
  caps,
  capTables,
  ductLengthTable,
  ductSizes,
  findBend,
  findCap,
  findInline,
  findMaterial,
  inlineParts,
  junctions,
  limits,
  materials,
  transitions,
} from '../../../src/hydraulics/catalogue.ts';
import type { Table } from '../../../src/hydraulics/losses/table.ts';
import { area } from '../../../src/hydraulics/section.ts';

const lists: Record<string, readonly CatalogueRow[]> = {
  bends,
  caps,
  ductSizes,
  inlineParts,
  junctions,
  limits,
  materials,
  transitions,
};
const everyRow = Object.entries(lists).flatMap(([list, rows]) => rows.map((row) => ({ list, row })));
const kinds = ['found', 'memory', 'common practice', 'assumption'];

/** Every table anywhere in the catalogue's files, with the path to it. */
function tablesIn(value: unknown, path: string): { path: string; table: Table }[] {
  if (typeof value !== 'object' || value === null) return [];
  if ('axes' in value && 'values' in value) return [{ path, table: value as Table }];
  return Object.entries(value).flatMap(([key, inner]) => tablesIn(inner, `${path}/${key}`));
}

const files = readdirSync('shared').filter((name) => name.endsWith('.json'));
const everyTable = files.flatMap((name) =>
  tablesIn(JSON.parse(readFileSync(`shared/${name}`, 'utf8')), name),
);

describe('the catalogue', () => {
  test('every row says what it is and where its numbers come from', () => {
    for (const { list, row } of everyRow) {
      const name = `${list}/${row.id}`;
      expect(row.id, name).toMatch(/^[a-z0-9][a-z0-9._-]*$/);
      expect(row.name.length, name).toBeGreaterThan(2);
      expect(row.what, name).toMatch(/\.$/);
      expect(row.source.length, name).toBeGreaterThan(5);
      expect(kinds, name).toContain(row.sourceKind);
    }
  });

  test('ids are unique within a list', () => {
    for (const [list, rows] of Object.entries(lists))
      expect(new Set(rows.map((row) => row.id)).size, list).toBe(rows.length);
  });

  test('every loss names the velocity pressure that it multiplies, its range, and who pays for the arc', () => {
    for (const row of [...bends, ...transitions, ...caps, ...inlineParts, ...junctions]) {
      expect(row.reference, row.id).toMatch(/velocity pressure/);
      expect(row.range.length, row.id).toBeGreaterThan(2);
      expect(typeof row.includesArcFriction, row.id).toBe('boolean');
    }
  });

  test('every axis of every table rises and every table is as large as its axes', () => {
    expect(everyTable.length).toBeGreaterThan(18);
    for (const { path, table } of everyTable) {
      for (const axis of table.axes)
        for (const [i, value] of axis.values.entries())
          expect(value, `${path} ${axis.name}`).toBeGreaterThan(
            axis.values[i - 1] ?? Number.NEGATIVE_INFINITY,
          );
      const sizes = table.axes.map((axis) => axis.values.length);
      expect(shape(table.values), path).toEqual(sizes);
    }
  });

  test('every number of every table is a finite number and none is negative', () => {
    for (const { path, table } of everyTable)
      for (const value of [table.values].flat(9) as number[]) {
        expect(Number.isFinite(value), path).toBe(true);
        expect(value, path).toBeGreaterThanOrEqual(0);
      }
  });

  test('rows that lean on other rows lean on rows that exist', () => {
    for (const row of bends) {
      if (row.counterpart !== undefined) expect(findBend(row.counterpart), row.id).toBeDefined();
      if (row.loss.kind === 'same as') expect(findBend(row.loss.row)?.loss.kind, row.id).toBe('angle factor');
      if (row.loss.kind === 'angle factor' && row.loss.shapedBy !== undefined)
        expect(findBend(row.loss.shapedBy), row.id).toBeDefined();
    }
    for (const { id, turn } of caps)
      if (turn && 'bend' in turn) expect(findBend(turn.bend), id).toBeDefined();
  });

  test('the ids that documents and templates use are there', () => {
    for (const id of [
      'galvanized',
      'stainless',
      'aluminium',
      'spiral',
      'semi-rigid',
      'flexible',
      'smooth-plastic',
    ])
      expect(findMaterial(id), id).toBeDefined();
    for (const id of [
      ...['smooth', 'stamped', 'five-piece', 'four-piece', 'three-piece', 'pleated', 'adjustable', 'mitred'],
      ...['mitred-vanes', 'flexible', 'rectangular-smooth', 'rectangular-mitred'],
    ])
      expect(findBend(id), id).toBeDefined();
    for (const id of [
      ...['open', 'wall-flap', 'wall-flap-small', 'wall-hooded', 'wall-louvre'],
      ...['roof-low', 'roof-cap', 'gooseneck'],
    ])
      expect(findCap(id), id).toBeDefined();
    for (const id of ['backdraught-damper', 'balancing-damper', 'screen', 'silencer', 'filter'])
      expect(findInline(id), id).toBeDefined();
    expect(findBend('no such bend')).toBeUndefined();
  });

  test('duct sizes run from 3 to 12 inches and 80 to 315 mm and hold both wall stacks', () => {
    const round = (system: string) =>
      ductSizes.flatMap(({ section, ...row }) =>
        row.system === system && section.shape === 'round' ? [section.diameter] : [],
      );
    expect(Math.min(...round('imperial'))).toBeCloseTo(0.0762, 6);
    expect(Math.max(...round('imperial'))).toBeCloseTo(0.3048, 6);
    expect(Math.min(...round('metric'))).toBeCloseTo(0.08, 6);
    expect(Math.max(...round('metric'))).toBeCloseTo(0.315, 6);
    const squareInches = ductSizes
      .filter((row) => row.series.startsWith('stack'))
      .map((row) => area(row.section) / 0.0254 ** 2);
    expect(squareInches).toContainEqual(expect.closeTo(32.5, 3));
    expect(squareInches).toContainEqual(expect.closeTo(45.5, 3));
  });

  test('roughness lies between drawn tube and the roughest duct of the handbook', () => {
    for (const row of materials) {
      expect(row.roughness, row.id).toBeGreaterThanOrEqual(1.5e-6 * 0.3048);
      expect(row.roughness, row.id).toBeLessThanOrEqual(0.01 * 0.3048);
      expect(row.roughness, row.id).toBeCloseTo(Number.parseFloat(row.printed) * 0.3048, 9);
    }
  });

  test('a material that may not carry kitchen air carries a caution', () => {
    for (const row of materials) if (!row.kitchen) expect(row.caution, row.id).toBeDefined();
  });

  test('every depressurization limit warns of carbon monoxide', () => {
    const rows = limits.filter((row) => row.topic === 'depressurization');
    expect(rows.length).toBeGreaterThanOrEqual(8);
    for (const row of rows) expect(row.caution, row.id).toMatch(/carbon monoxide/);
  });

  test('bands run from least to most', () => {
    for (const { id, value } of limits)
      if (typeof value !== 'number') expect(value[0], id).toBeLessThan(value[1]);
  });

  test('the residential duct table allows no less on a larger or smoother duct, and no more at a higher rating', () => {
    const length = (cell: number | string) =>
      cell === 'not allowed' ? 0 : cell === 'no limit' ? Number.POSITIVE_INFINITY : (cell as number);
    const { rows, airflows } = ductLengthTable;
    for (const row of rows) {
      expect(row.lengths.length).toBe(airflows.length);
      const lengths = row.lengths.map(length);
      for (const [i, value] of lengths.entries()) expect(value).toBeLessThanOrEqual(lengths[i - 1] ?? value);
      const gentler = rows.filter(
        (other) => other.diameter >= row.diameter && (other.duct === 'smooth' || row.duct === 'flex'),
      );
      for (const other of gentler)
        for (const [i, cell] of other.lengths.entries())
          expect(length(cell)).toBeGreaterThanOrEqual(lengths[i] as number);
    }
  });

  test('shared tables say where they come from', () => {
    for (const table of [...Object.values(bendTables), ...Object.values(capTables)]) {
      expect(table.source.length).toBeGreaterThan(5);
      expect(kinds).toContain(table.sourceKind);
    }
  });
});

function shape(values: unknown): number[] {
  if (!Array.isArray(values)) return [];
  const inner = values.map(shape);
  const first = inner[0] ?? [];
  for (const other of inner) if (other.join() !== first.join()) throw new Error('an uneven table');
  return [values.length, ...first];
}
