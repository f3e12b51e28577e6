import { describe, expect, it } from 'vitest';
import { requiredAirflow, requiredDerivation } from '../../../src/advice/required.ts';

const CFM = 0.3048 ** 3 / 60;
const cooktop = { fuel: 'gas', width: 0.762, placement: 'wall' } as const;
const kitchen = (more: object) => ({ ceilingHeight: 2.44, cooktop: { ...cooktop, ...more } });

describe('required airflow', () => {
  it('a 30 in cooktop against a wall asks for 250 cfm (D-003)', () => {
    expect(requiredAirflow(kitchen({})).governing.flow / CFM).toBeCloseTo(250, 6);
  });

  it('a 30 in cooktop on an island asks for 375 cfm (D-004)', () => {
    expect(requiredAirflow(kitchen({ placement: 'island' })).governing.flow / CFM).toBeCloseTo(375, 6);
  });

  it('40,000 Btu/h of gas burners ask for 400 cfm and govern (D-006)', () => {
    const { governing } = requiredAirflow(kitchen({ heatInput: 40_000 * 0.29307107 }));
    expect(governing.id).toBe('heat-input');
    expect(governing.flow / CFM).toBeCloseTo(400, 6);
  });

  it('the code minimum governs where there is no cooktop to go by', () => {
    expect(requiredAirflow({ ceilingHeight: 2.44 }).governing.id).toBe('code-minimum');
  });

  it('is derived from every rule that applies, and is the largest of them', () => {
    const derived = requiredDerivation(kitchen({ heatInput: 40_000 * 0.29307107 }));
    expect(derived.value).toBe(Math.max(...derived.inputs.map(({ value }) => value)));
    expect(derived.inputs).toHaveLength(4);
    expect(derived.sources.every(({ source }) => source.length > 3)).toBe(true);
  });
});
