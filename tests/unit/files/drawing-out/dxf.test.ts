import DxfParser, {
  type IArcEntity,
  type IDimensionEntity,
  type IDxf,
  type IEntity,
  type ILineEntity,
  type ITextEntity,
} from 'dxf-parser';
import { describe, expect, it } from 'vitest';
import type { DrawnSheet } from '../../../../src/drawing/marks.ts';
import { sheetDrawing } from '../../../../src/drawing/sheet-drawing.ts';
import { dxfFile } from '../../../../src/files/drawing-out/dxf.ts';
import type { Job } from '../../../../src/graph/document.ts';
import { inferRoute } from '../../../../src/graph/infer.ts';
import { drawn, places } from '../../../support/drawn.ts';

function read(job: Job, sheets: readonly DrawnSheet[], space = false): IDxf {
  const route = inferRoute(job, 's1');
  const drawings = sheets.map((sheet) => sheetDrawing({ job, route, sheet, scale: 50, wholeRoom: true }));
  const parsed = new DxfParser().parseSync(dxfFile({ drawings, ...(space && { space: route }) }));
  if (!parsed) throw new Error('the DXF can be read');
  return parsed;
}

const on = <T extends IEntity>(entities: readonly IEntity[], layer: string, type: string): T[] =>
  entities.filter((one) => one.layer === layer && one.type === type) as T[];

const ends = (line: ILineEntity) => line.vertices.map(({ x, y, z }) => [x, y, z ?? 0]);

const mm = (at: readonly number[]) => at.map((metres) => expect.closeTo(metres * 1000, 5));

describe('a DXF of the run in space', () => {
  it('has every leg as a line from node to node, in millimetres of the house', () => {
    const { entities } = read(drawn(), [], true);
    const { n1, n2, n3, n4 } = places;
    expect(on<ILineEntity>(entities, 'DUCT-CENTRE-3D', 'LINE').map(ends)).toEqual([
      [mm(n1), mm(n2)],
      [mm(n2), mm(n3)],
      [mm(n3), mm(n4)],
    ]);
  });
});

describe('a DXF of one sheet', () => {
  it('says that its unit is the millimetre', () => {
    expect(read(drawn(), ['floor']).header.$INSUNITS).toBe(4);
  });

  it('keeps the coordinates of the graph: centre lines run between the nodes, short by the bends', () => {
    const job = drawn();
    const bend = inferRoute(job, 's1').nodes.get('n3')?.bend;
    const tangent = (bend?.radius ?? Number.NaN) * Math.tan(Math.PI / 4);
    const { entities } = read(job, ['floor']);
    const lines = on<ILineEntity>(entities, 'DUCT-CENTRE', 'LINE').map(ends);
    expect(lines).toContainEqual([
      mm([places.n3[0] + tangent, places.n3[1], 0]),
      mm([places.n4[0], places.n4[1], 0]),
    ]);
  });

  it('draws the same whatever the scale, but for the letters', () => {
    const job = drawn();
    const route = inferRoute(job, 's1');
    const at = (scale: number) =>
      new DxfParser().parseSync(dxfFile({ drawings: [sheetDrawing({ job, route, sheet: 'floor', scale })] }));
    const [near, far] = [at(10), at(100)].map((file) => [
      ...(file?.entities ?? []),
      ...(file?.blocks['*D1']?.entities ?? []),
    ]) as [IEntity[], IEntity[]];
    const walls = (entities: IEntity[]) => on<ILineEntity>(entities, 'DUCT', 'LINE').map(ends);
    expect(walls(far)).toEqual(walls(near));
    const height = (entities: IEntity[]) =>
      on<ITextEntity>(entities, 'DIMENSIONS', 'TEXT')[0]?.textHeight ?? 0;
    expect(height(far) / height(near)).toBeCloseTo(10, 6);
  });

  it('draws smooth turns as arcs of their radius round their centre', () => {
    const job = drawn();
    for (const node of job.schemes[0]?.nodes ?? [])
      if (node.role === 'turn') node.bend = { kind: 'smooth', radiusRatio: 1.5 };
    const { entities } = read(job, ['floor']);
    const radius = 1.5 * 203.2;
    const [arc] = on<IArcEntity>(entities, 'DUCT-CENTRE', 'ARC');
    expect(arc?.radius).toBeCloseTo(radius, 5);
    expect([arc?.center.x, arc?.center.y]).toEqual([
      expect.closeTo(places.n3[0] * 1000 + radius, 5),
      expect.closeTo(places.n3[1] * 1000 - radius, 5),
    ]);
    expect([arc?.startAngle, arc?.endAngle].map((a) => ((a ?? 0) * 180) / Math.PI)).toEqual([
      expect.closeTo(90, 6),
      expect.closeTo(180, 6),
    ]);
    const walls = on<IArcEntity>(entities, 'DUCT-FITTINGS', 'ARC').map((one) => one.radius);
    expect(walls.sort((a, b) => a - b)).toEqual([
      expect.closeTo(radius - 101.6, 5),
      expect.closeTo(radius + 101.6, 5),
    ]);
  });

  it('has layers by trade meaning, centre lines with dashes and dots', () => {
    const { tables } = read(drawn(), ['section-x']);
    expect(Object.keys(tables.layer.layers)).toEqual(
      expect.arrayContaining(['DUCT', 'DUCT-CENTRE', 'DUCT-FITTINGS', 'HOOD', 'CAP', 'DIMENSIONS', 'NOTES']),
    );
    expect(tables.lineType.lineTypes.CENTER?.pattern).toEqual([300, -75, 75, -75]);
  });

  it('tells the length of every leg in words', () => {
    const { entities } = read({ ...drawn(), units: 'metric' }, ['floor']);
    const texts = on<IDimensionEntity>(entities, 'DIMENSIONS', 'DIMENSION').map(({ text }) => text);
    expect(texts).toEqual(expect.arrayContaining(['3000 mm', '2000 mm']));
  });

  it('has the length of a leg as a dimension between its nodes', () => {
    const { entities } = read({ ...drawn(), units: 'metric' }, ['floor']);
    const found = on<IDimensionEntity>(entities, 'DIMENSIONS', 'DIMENSION').find(
      ({ text }) => text === '3000 mm',
    );
    const { n3, n4 } = places;
    const feet = [found?.linearOrAngularPoint1, found?.linearOrAngularPoint2];
    expect(feet.map((at) => [at?.x, at?.y, 0])).toEqual([mm([n3[0], n3[1], 0]), mm([n4[0], n4[1], 0])]);
    expect(found?.actualMeasurement).toBeCloseTo(3000, 5);
    expect(found?.angle).toBeCloseTo(0, 6);
  });

  it('has for every dimension a block with its lines and its text, which no other refers to', () => {
    const { blocks, entities } = read(drawn(), ['section-x']);
    const dimensions = on<IDimensionEntity>(entities, 'DIMENSIONS', 'DIMENSION');
    expect(dimensions.length).toBeGreaterThan(0);
    expect(new Set(dimensions.map(({ block }) => block)).size).toBe(dimensions.length);
    for (const { block, text } of dimensions) {
      const picture = blocks[block]?.entities ?? [];
      expect(on<ITextEntity>(picture, 'DIMENSIONS', 'TEXT').map((one) => one.text)).toEqual([text]);
      expect(on<ILineEntity>(picture, 'DIMENSIONS', 'LINE').length).toBeGreaterThanOrEqual(3);
    }
  });

  it('leaves room for the text in the line of a dimension', () => {
    const { blocks, entities } = read({ ...drawn(), units: 'metric' }, ['floor']);
    const found = on<IDimensionEntity>(entities, 'DIMENSIONS', 'DIMENSION').find(
      ({ text }) => text === '3000 mm',
    );
    const [middle, height] = [found?.middleOfText.x ?? 0, found?.anchorPoint.y ?? 0];
    const picture = on<ILineEntity>(blocks[found?.block ?? '']?.entities ?? [], 'DIMENSIONS', 'LINE');
    const along = picture
      .map(ends)
      .filter((two) => two.every((end) => Math.abs((end[1] ?? 0) - height) < 1e-6));
    const over = along.filter((two) => {
      const [low, high] = two.map(([x]) => x ?? 0).sort((p, q) => p - q) as [number, number];
      return low < middle && middle < high;
    });
    expect(along.length).toBeGreaterThanOrEqual(2);
    expect(over).toEqual([]);
  });

  it('takes nothing that people typed for a code of the format, and keeps every letter', () => {
    const job = drawn();
    const text = '厨房 %%d \\U+0041 ^J\u0000x\n  0\nENDSEC 50%';
    job.sheetNotes = [{ id: 'm1', sheet: 'floor', at: [0, 0], text }];
    const { entities } = read(job, ['floor']);
    const notes = on<ITextEntity>(entities, 'NOTES', 'TEXT').map((one) => one.text);
    expect(notes).toContain('厨房 %%%%%%d \\U+005CU+0041 ^ J x');
    expect(notes).toContain('ENDSEC 50%');
  });
});

describe('a DXF of several sheets', () => {
  it('has a block for each, inserted apart, with the coordinates of the graph kept inside', () => {
    const { blocks, entities } = read(drawn(), ['floor', 'section-x', 'section-y'], true);
    const inserted = entities.filter(({ type }) => type === 'INSERT');
    expect(inserted.map((one) => (one as IEntity & { name: string }).name)).toEqual([
      'FLOOR',
      'SECTION-NORTH',
      'SECTION-WEST',
      'RUN-3D',
    ]);
    const space = on<ILineEntity>(blocks['RUN-3D']?.entities ?? [], 'DUCT-CENTRE-3D', 'LINE');
    expect(space.map(ends)[0]).toEqual([mm(places.n1), mm(places.n2)]);
    const section = on<ILineEntity>(blocks['SECTION-NORTH']?.entities ?? [], 'DUCT-CENTRE', 'LINE');
    expect(section.flatMap(ends)).toContainEqual(mm([places.n1[0], places.n1[2], 0]));
  });
});
