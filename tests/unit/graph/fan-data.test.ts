import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import type { FanData, FanDataKind } from '../../../src/graph/edits/fan-data.ts';
import {
  addSpeed,
  fanDataAs,
  fanDataKind,
  fanDataKinds,
  removeSpeed,
  renameSpeed,
  scalableFrom,
  setFanData,
} from '../../../src/graph/edits/fan-data.ts';
import { speedCurve } from '../../../src/graph/speeds.ts';
import { emptyJob, genericHood } from '../../../src/graph/templates.ts';
import { freeDelivery } from '../../../src/hydraulics/fan.ts';

const job = emptyJob('metric');
const hoodId = job.hoods[0]?.id ?? '';
const top = 3;
const hoodOf = (of: typeof job) => of.hoods[0] ?? genericHood('none');

const told = (kind: FanDataKind) => {
  const data = fanDataAs(hoodOf(job), top, kind) as FanData;
  return produce(job, (draft) => setFanData(draft, hoodId, top, data));
};

describe('fan data told another way', () => {
  it.each(fanDataKinds)('as %s has that field alone, and still gives a curve', (kind) => {
    const speed = hoodOf(told(kind)).speeds[top];
    expect(speed && fanDataKinds.filter((each) => speed[each] !== undefined)).toEqual([kind]);
    expect(speed && fanDataKind(speed)).toBe(kind);
    expect(speedCurve(hoodOf(told(kind)), top).known).toBe(true);
  });

  it.each(['certified', 'freeAir', 'scaledFrom'] as const)('as %s moves about as much free air', (kind) => {
    const curve = speedCurve(hoodOf(told(kind)), top);
    expect(curve.known && freeDelivery(curve.curve)).toBeGreaterThan(0.25);
    expect(curve.known && freeDelivery(curve.curve)).toBeLessThan(0.32);
  });

  it('says what it assumes for everything but a full curve', () => {
    for (const kind of fanDataKinds) {
      const curve = speedCurve(hoodOf(told(kind)), top);
      expect(curve.known && curve.assumptions.length > 0).toBe(kind !== 'curve');
    }
  });

  it('comes back to points from a free-air rating', () => {
    const free = told('freeAir');
    const data = fanDataAs(hoodOf(free), top, 'curve') as { curve: [number, number][] };
    const flows = data.curve.map(([flow]) => flow);
    expect(flows).toEqual([...flows].sort((a, b) => a - b));
    expect(data.curve.at(-1)?.[1]).toBeCloseTo(0, 0);
  });
});

describe('speeds of a hood', () => {
  it('are added with a name of their own', () => {
    const more = produce(job, (draft) => {
      addSpeed(draft, hoodId);
      addSpeed(draft, hoodId);
    });
    const names = hoodOf(more).speeds.map((speed) => speed.name);
    expect(new Set(names).size).toBe(6);
    expect(speedCurve(hoodOf(more), 5).known).toBe(true);
  });

  it('are not scaled from themselves, however far round', () => {
    const ring = told('scaledFrom');
    const base = hoodOf(ring).speeds[top]?.scaledFrom?.speed;
    const baseIndex = hoodOf(ring).speeds.findIndex((speed) => speed.name === base);
    expect(scalableFrom(hoodOf(ring), baseIndex)).not.toContain('boost');
    expect(scalableFrom(hoodOf(ring), top)).not.toContain('boost');
  });

  it('keep the curve that they were scaled to when the speed behind it goes', () => {
    const scaled = told('scaledFrom');
    const base = hoodOf(scaled).speeds.findIndex(
      (speed) => speed.name === hoodOf(scaled).speeds[top]?.scaledFrom?.speed,
    );
    const before = speedCurve(hoodOf(scaled), top);
    const after = produce(scaled, (draft) => {
      removeSpeed(draft, hoodId, base);
    });
    const now = speedCurve(hoodOf(after), top - 1);
    expect(now.known && before.known && now.curve.points).toEqual(before.known && before.curve.points);
  });

  it('are never all removed', () => {
    const one = produce(job, (draft) => {
      for (let i = 0; i < 6; i += 1) removeSpeed(draft, hoodId, 0);
    });
    expect(hoodOf(one).speeds).toHaveLength(1);
  });

  it('take those that are scaled from them along to a new name, and refuse a name that is taken', () => {
    const scaled = told('scaledFrom');
    const base = hoodOf(scaled).speeds[top]?.scaledFrom?.speed ?? '';
    const index = hoodOf(scaled).speeds.findIndex((speed) => speed.name === base);
    const renamed = produce(scaled, (draft) => {
      expect(renameSpeed(draft, hoodId, index, 'boost')).toBe(false);
      expect(renameSpeed(draft, hoodId, index, 'quiet')).toBe(true);
    });
    expect(hoodOf(renamed).speeds[top]?.scaledFrom?.speed).toBe('quiet');
  });
});
