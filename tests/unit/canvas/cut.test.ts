import { describe, expect, it } from 'vitest';
import { standing, standingsOf } from '../../../src/canvas/cut.ts';
import { misfits } from '../../../src/canvas/draw-fit.ts';
import { fitFindings } from '../../../src/graph/fit.ts';
import { run, upAndOut } from '../drawing/drawing.ts';

describe('a box of space', () => {
  it('is cut where the plane passes through it or along its side', () => {
    expect(standing([0, 1, 0], [1, 2, 1], 'section-x', 1.5)).toBe('cut');
    expect(standing([0, 1, 0], [1, 2, 1], 'section-x', 2)).toBe('cut');
  });

  it('that stands south of the plane is before a section that looks north, and one north of it beyond', () => {
    expect(standing([0, 1, 0], [1, 2, 1], 'section-x', 3)).toBe('before');
    expect(standing([0, 1, 0], [1, 2, 1], 'section-x', 0)).toBe('beyond');
  });

  it('that stands east of the plane is before a section that looks west', () => {
    expect(standing([1, 0, 0], [2, 1, 1], 'section-y', 0.5)).toBe('before');
    expect(standing([1, 0, 0], [2, 1, 1], 'section-y', 3)).toBe('beyond');
  });
});

describe('duct', () => {
  const { route } = run(upAndOut);

  it('is cut where the plane meets its width, not only its centre line', () => {
    expect(standingsOf(route, 'section-y', 1.09).leg('d0')).toBe('cut');
    expect(standingsOf(route, 'section-y', 1.11).leg('d0')).toBe('beyond');
  });

  it('stands apart leg by leg: north of a plane the riser is before it and the run passes through', () => {
    const stands = standingsOf(route, 'section-x', 1);
    expect([stands.leg('d0'), stands.leg('d1')]).toEqual(['before', 'cut']);
    expect(stands.of({ of: 'node', id: 'n2' })).toBe('beyond');
    expect(stands.of({ of: 'segment', id: 'd0/0' })).toBe('before');
  });
});

describe('a clash', () => {
  it('is marked on the duct that runs into a block, at that block', () => {
    const drawn = run(upAndOut);
    const job = {
      ...drawn.job,
      blocks: [
        {
          id: 'b1',
          name: 'beam',
          kind: 'beam' as const,
          min: [0, 1, 2.4] as [number, number, number],
          max: [2, 1.2, 2.8] as [number, number, number],
        },
      ],
    };
    const findings = fitFindings(job, drawn.route);
    const marks = misfits(findings, drawn.on('floor').drawables, job.blocks);
    expect(marks.map(({ item, block, grave, close }) => [item.id, block.id, grave, close])).toContainEqual([
      'd1',
      'b1',
      true,
      false,
    ]);
    expect(misfits([], drawn.on('floor').drawables, job.blocks)).toEqual([]);
  });
});
