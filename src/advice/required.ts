import type { Derivation } from '../graph/derive/derivation.ts';
import type { Job } from '../graph/document.ts';
import type { SourceKind } from '../hydraulics/types.ts';
import { BTU_PER_HOUR, CFM, FOOT, formatNumber } from '../units/index.ts';

export interface AirflowRule {
  readonly id: string;
  readonly name: string;
  /** m3/s */
  readonly flow: number;
  /** A sentence with its numbers. */
  readonly because: string;
  readonly source: string;
  readonly sourceKind: SourceKind;
}

export interface RequiredAirflow {
  readonly rules: readonly AirflowRule[];
  /** The rule that asks for most. */
  readonly governing: AirflowRule;
}

const GUIDE = 'Home Ventilating Institute recommendation as quoted by a home-repair monthly, May 2020';

/**
 * The airflow that the cooktop asks for, by every rule that applies, and the one that governs (the largest),
 * m3/s. Guidance for residential cooking; the adopted code and the hood's instructions decide.
 */
export function requiredAirflow(kitchen: Job['kitchen']): RequiredAirflow {
  const minimum: AirflowRule = {
    id: 'code-minimum',
    name: 'Code minimum, intermittent kitchen exhaust',
    flow: 100 * CFM,
    because: 'A kitchen exhaust that runs on demand moves at least 100 cfm.',
    source: 'IRC Table M1505.4.4 (M1507.4 in earlier editions)',
    sourceKind: 'found',
  };
  const rules = [minimum, ...cooktopRules(kitchen.cooktop)];
  return { rules, governing: rules.reduce((most, rule) => (rule.flow > most.flow ? rule : most)) };
}

function cooktopRules(cooktop: Job['kitchen']['cooktop']): AirflowRule[] {
  if (!cooktop) return [];
  const feet = cooktop.width / FOOT;
  const wall = cooktop.placement === 'wall';
  const perFoot = wall ? 100 : 150;
  const minimumPerFoot = wall ? 40 : 50;
  const place = wall ? 'against a wall' : 'with open sides';
  const rules: AirflowRule[] = [
    {
      id: 'width',
      name: 'Cooktop width, recommended',
      flow: perFoot * feet * CFM,
      because: `${perFoot} cfm a foot of width for a cooktop ${place}, ${formatNumber(feet, 1)} ft.`,
      source: GUIDE,
      sourceKind: 'found',
    },
    {
      id: 'width-minimum',
      name: 'Cooktop width, least',
      flow: minimumPerFoot * feet * CFM,
      because: `${minimumPerFoot} cfm a foot of width for a cooktop ${place}, ${formatNumber(feet, 1)} ft.`,
      source: 'Home Ventilating Institute range hood guide',
      sourceKind: 'memory',
    },
  ];
  if (cooktop.fuel === 'gas' && cooktop.heatInput) {
    const btu = cooktop.heatInput / BTU_PER_HOUR;
    rules.push({
      id: 'heat-input',
      name: 'Burner heat input',
      flow: (btu / 100) * CFM,
      because: `1 cfm for every 100 Btu/h of burners, ${Math.round(btu / 100) * 100} Btu/h.`,
      source: 'Rule of thumb of the trade for gas, as printed in a home-building magazine',
      sourceKind: 'found',
    });
  }
  return rules;
}

/** How the required airflow comes about: every rule that applies, and the largest. */
export function requiredDerivation(kitchen: Job['kitchen']): Derivation {
  const { rules, governing } = requiredAirflow(kitchen);
  return {
    ref: { figure: 'required airflow', speed: 0 },
    title: 'Airflow that the cooktop asks for',
    symbol: 'Q_need',
    value: governing.flow,
    unit: 'm³/s',
    kind: 'flow',
    formula: `the largest of ${rules.map((_, i) => `Q_${i + 1}`).join(', ')}`,
    inputs: rules.map(({ name, flow }, i) => ({
      symbol: `Q_${i + 1}`,
      name,
      value: flow,
      unit: 'm³/s',
      kind: 'flow',
    })),
    sources: rules.map(({ id, source, sourceKind, because }) => ({
      row: `rules/${id}`,
      source,
      sourceKind,
      notes: [because],
    })),
    notes: [`Governed by: ${governing.name}. ${governing.because}`],
  };
}
