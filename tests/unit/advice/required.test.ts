import { describe, expect, it } from 'vitest';
import { requiredAirflow, requiredDerivation } from '../../../src/advice/required.ts';
import { job as jobSchema } from '../../../src/graph/document.ts';
import { setRequiredAirflow } from '../../../src/graph/edits/index.ts';
import { drawn, edited } from '../../support/drawn.ts';

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

  describe('where the job has an airflow of its own', () => {
    const own = (flow: number) => ({
      ...kitchen({ heatInput: 40_000 * 0.29307107 }),
      requiredAirflow: { flow: flow * CFM, reason: 'The hood’s instructions ask for it.' },
    });

    it('is that, with its reason, and says which rule it takes the place of', () => {
      const { governing, overruled, rules } = requiredAirflow(own(300));
      expect(governing.flow / CFM).toBeCloseTo(300, 6);
      expect(governing.because).toBe('The hood’s instructions ask for it.');
      expect(overruled?.id).toBe('heat-input');
      expect(rules.map(({ id }) => id)).toEqual([
        'code-minimum',
        'width',
        'width-minimum',
        'heat-input',
        'own',
      ]);
    });

    it('is derived from that figure, with the rules still shown', () => {
      const derived = requiredDerivation(own(300));
      expect(derived.value / CFM).toBeCloseTo(300, 6);
      expect(derived.formula).toContain('Q_own');
      expect(derived.inputs.at(-1)).toMatchObject({ symbol: 'Q_own', value: 300 * CFM });
      expect(derived.sources.at(-1)?.notes).toEqual(['The hood’s instructions ask for it.']);
    });
  });

  it('is set with a reason or not at all, and taken back without a trace', () => {
    const before = drawn();
    const { job: silent, given } = edited((job) => setRequiredAirflow(job, { flow: 0.1, reason: '  ' }));
    expect([silent, given]).toEqual([before, false]);
    const { job: set } = edited((job) => setRequiredAirflow(job, { flow: 0.1, reason: ' As agreed. ' }));
    expect(set.kitchen.requiredAirflow).toEqual({ flow: 0.1, reason: 'As agreed.' });
    expect(jobSchema.safeParse(set).success).toBe(true);
    expect(edited((job) => setRequiredAirflow(job, null), set).job).toEqual(before);
  });
});
