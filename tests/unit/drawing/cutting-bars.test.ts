import { describe, expect, it } from 'vitest';
import { makes } from '../../../src/advice/parts/makes.ts';
import type { CuttingPlan } from '../../../src/advice/parts/plan.ts';
import { barDrawings } from '../../../src/drawing/cutting-bars.ts';

const make = makes.find(({ id }) => id === 'spiral');
if (!make) throw new Error('the list of makes has spiral pipe');

const style = {
  scale: 100,
  textWidth: (text: string) => 6 * text.length,
  piece: (metres: number) => `${metres.toFixed(2)} m`,
  left: (metres: number) => `${metres.toFixed(2)} m left`,
};

function plan(...bars: readonly (readonly number[])[]): CuttingPlan {
  const stock = 3.048;
  return {
    key: 'duct/spiral/round-203',
    section: { shape: 'round', diameter: 0.2032 },
    material: 'spiral',
    make: { ...(make as NonNullable<typeof make>), kerf: 0 },
    stock,
    own: false,
    bars: bars.map((lengths, i) => ({
      cuts: lengths.map((length) => ({ length, covers: length, segments: [`d${i}`] })),
      offcut: stock - lengths.reduce((sum, length) => sum + length, 0),
    })),
    bought: bars.length * stock,
    used: 0,
    waste: 0,
    proved: true,
  };
}

describe('a drawn stock length', () => {
  it('is to scale: boxes as long as their pieces, end to end, and the rest left over', () => {
    const [bar] = barDrawings(plan([1.8, 0.9]), style);
    expect(bar?.width).toBeCloseTo(304.8, 9);
    expect(bar?.boxes.map(({ x, width }) => [x, width])).toEqual([
      [0, expect.closeTo(180, 9)],
      [expect.closeTo(180, 9), expect.closeTo(90, 9)],
      [expect.closeTo(270, 9), expect.closeTo(34.8, 9)],
    ]);
    expect(bar?.boxes.map(({ cut }) => cut?.length ?? null)).toEqual([1.8, 0.9, null]);
  });

  it('carries every label, in its box where it fits and else below, none over another or out of the length', () => {
    const [bar] = barDrawings(plan([2.4, 0.2, 0.12, 0.1, 0.1]), style);
    const below = bar?.boxes.filter(({ inside }) => !inside) ?? [];
    expect(bar?.boxes.filter(({ inside }) => inside).map(({ label }) => label)).toEqual(['2.40 m']);
    expect(below).toHaveLength(5);
    below.forEach(({ at, label }, i) => {
      const half = style.textWidth(label) / 2;
      expect(at + half).toBeLessThanOrEqual((bar?.width ?? 0) + 1e-9);
      const next = below[i + 1];
      if (next) expect(at + half).toBeLessThanOrEqual(next.at - style.textWidth(next.label) / 2);
    });
  });

  it('stands once for all that are cut alike, with the legs of each of them', () => {
    const drawn = barDrawings(plan([3.048], [3.048], [1.2]), style);
    expect(drawn.map(({ first, last }) => [first, last])).toEqual([
      [1, 2],
      [3, 3],
    ]);
    expect(drawn[0]?.boxes[0]?.cut?.segments).toEqual(['d0', 'd1']);
  });
});
