import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import { openingUp } from '../../../src/advice/cost/opening-up.ts';
import { costDifference, costOf, formatMoney, priceOf } from '../../../src/advice/cost/price.ts';
import { boughtOf, type Part, type PartKind, partsOf } from '../../../src/advice/parts.ts';
import type { Block, Job, Vec3 } from '../../../src/graph/document.ts';
import { moveNodes, setBend, setDuct, setMaterial } from '../../../src/graph/edits/index.ts';
import { bends, caps, inlineParts, materials } from '../../../src/hydraulics/catalogue.ts';
import { exampleJob, runThrough } from '../../support/route-job.ts';

const line: Vec3[] = [
  [0, 0, 0],
  [0, 4, 0],
];

function part(kind: PartKind, row: string, diameter = 0.2): Part {
  const section = { shape: 'round' as const, diameter };
  return { key: `${kind}/${row}`, kind, row, quantity: 1, unit: 'piece', section, nodes: [], segments: [] };
}

describe('prices', () => {
  it('are there for every material, bend, cap and part in line of the catalogue', () => {
    const all = [
      ...materials.map(({ id }) => part('duct', id)),
      ...bends.map(({ id }) => part('bend', id)),
      ...caps.map(({ id }) => part('cap', id)),
      ...inlineParts.map(({ id }) => part('in-line', id)),
    ];
    const missing = all.filter((one) => priceOf(one, {}) === null).map(({ key }) => key);
    expect(missing).toEqual([]);
  });

  it('rise with the diameter', () => {
    const each = (diameter: number) => priceOf(part('duct', 'galvanized', diameter), {})?.each ?? 0;
    expect(each(0.15)).toBeLessThan(each(0.2));
    expect(each(0.2)).toBeLessThan(each(0.25));
  });

  it('are the job’s own where it has them, and say which', () => {
    const duct = part('duct', 'galvanized');
    expect(priceOf(duct, {})?.from).toBe('example');
    expect(priceOf(duct, { [duct.key]: 3 })).toEqual({ each: 3, from: 'yours' });
  });

  it('are none for what nobody has priced, and the total says so', () => {
    const job = produce(runThrough(line), (draft) => setMaterial(draft, 'scheme-1', 'all', 'bamboo'));
    expect(priceOf(part('cap', 'unheard-of'), {})).toBeNull();
    expect(costOf(job, 'scheme-1').unpriced).toBe(
      partsOf(job, 'scheme-1').filter((one) => priceOf(one, {}) === null).length,
    );
  });

  it('add up to the cost of a scheme', () => {
    const { total, lines } = costOf(exampleJob(), 'wall');
    const sum = lines.reduce((n, { part: one, price }) => n + (price?.each ?? 0) * boughtOf(one), 0);
    expect(total).toBeCloseTo(sum, 9);
    expect(total).toBeGreaterThan(0);
  });

  it('tell a difference of cost with the sign of the change', () => {
    const job = runThrough(line);
    const larger = produce(job, (draft) =>
      setDuct(draft, 'scheme-1', 'all', { shape: 'round', diameter: 0.254 }),
    );
    expect(costDifference(job, larger, 'scheme-1')).toBeGreaterThan(0);
    expect(costDifference(larger, job, 'scheme-1')).toBe(-costDifference(job, larger, 'scheme-1'));
  });

  it('are written in whole units of money', () => {
    expect([
      formatMoney(1234.4),
      formatMoney(-12.2, true),
      formatMoney(3.6, true),
      formatMoney(0.2, true),
    ]).toEqual(['$1234', '−$12', '+$4', '±$0']);
  });
});

describe('opening up', () => {
  const wider = (job: Job, segments: readonly string[]) =>
    produce(job, (draft) => setDuct(draft, 'scheme-1', segments, { shape: 'round', diameter: 0.254 }));
  const chase: Block = { id: 'c', name: 'chase', kind: 'chase', min: [-0.3, 1, -0.3], max: [0.3, 3, 0.3] };
  const open = (job: Job, changed: Job) => openingUp(job, changed, 'scheme-1');

  it('is the length of the duct that changes', () => {
    const job = runThrough(line);
    expect(open(job, wider(job, ['d1']))).toBeCloseTo(4, 6);
  });

  it('is nothing where nothing changes', () => {
    const job = runThrough(line);
    expect(open(job, job)).toBe(0);
  });

  it('leaves out what lies in a chase', () => {
    const job = { ...runThrough(line), blocks: [chase] };
    expect(open(job, wider(job, ['d1']))).toBeCloseTo(2, 1);
  });

  it('does not leave it out where another block stands before it', () => {
    const cabinet: Block = { ...chase, id: 'k', kind: 'cabinet' };
    const job = { ...runThrough(line), blocks: [chase, cabinet] };
    expect(open(job, wider(job, ['d1']))).toBeCloseTo(4, 6);
  });

  it('leaves out what is reached from outside', () => {
    const wall = {
      id: 'w',
      name: 'wall',
      kind: 'wall' as const,
      min: [-1, 3.8, -1] as Vec3,
      max: [1, 4, 1] as Vec3,
    };
    const job = { ...runThrough(line), exits: [wall] };
    expect(open(job, wider(job, ['d1']))).toBeCloseTo(3.5, 1);
  });

  it('is a reach of 0.3 m on either side of a bend that is changed', () => {
    const job = runThrough([
      [0, 0, 0],
      [0, 0, 2],
      [0, 3, 2],
    ]);
    const changed = produce(job, (draft) => setBend(draft, 'scheme-1', 'n1', { kind: 'mitred' }));
    expect(open(job, changed)).toBeCloseTo(0.6, 1);
  });

  it('is only the end of a leg that is drawn out in its own line', () => {
    const job = runThrough(line);
    const shorter = produce(job, (draft) => moveNodes(draft, 'scheme-1', ['n1'], [0, -0.5, 0]));
    expect(open(job, shorter)).toBeCloseTo(0.5, 1);
  });
});
