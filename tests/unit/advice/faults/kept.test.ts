import { describe, expect, it } from 'vitest';
import { kept, stillMeasured } from '../../../../src/advice/faults/kept.ts';
import type { Measurement } from '../../../../src/advice/faults/types.ts';

const speeds = (...names: string[]) => names.map((name) => ({ hood: 'h1', name }));
const air = (speed: number): Measurement => ({
  kind: 'hood air',
  speed,
  condition: 'as used',
  value: 0.1 + speed,
});

describe('measurements that are kept while the hood changes', () => {
  const all = kept([air(0), air(1), air(2)], speeds('low', 'medium', 'high'));

  it('stay as they are while its speeds do', () => {
    expect(stillMeasured(all, speeds('low', 'medium', 'high'))).toEqual([air(0), air(1), air(2)]);
  });

  it('fall away with a speed that is removed, and the others go with theirs', () => {
    expect(stillMeasured(all, speeds('medium', 'high'))).toEqual([
      { ...air(1), speed: 0 },
      { ...air(2), speed: 1 },
    ]);
  });

  it('come back when the removal is undone', () => {
    stillMeasured(all, speeds('medium', 'high'));
    expect(stillMeasured(all, speeds('low', 'medium', 'high'))).toHaveLength(3);
  });

  it('keep to a speed that is renamed', () => {
    expect(stillMeasured(all, speeds('low', 'medium', 'full'))).toEqual([air(0), air(1), air(2)]);
  });

  it('move on where a speed is put in before theirs', () => {
    expect(stillMeasured(all, speeds('night', 'low', 'medium', 'high')).map(({ speed }) => speed)).toEqual([
      1, 2, 3,
    ]);
  });

  it('of another hood are another hood’s', () => {
    const other = [{ hood: 'h2', name: 'low' }, ...speeds('low', 'medium', 'high')];
    expect(stillMeasured(all, other).map(({ speed }) => speed)).toEqual([1, 2, 3]);
    expect(stillMeasured(all, [{ hood: 'h2', name: 'low' }])).toEqual([]);
  });

  it('of a speed that is not there are not kept', () => {
    expect(kept([air(5)], speeds('low'))).toEqual([]);
  });
});
