import type { Derivation } from '../graph/derive/derivation.ts';
import type { Job } from '../graph/document.ts';
import type { SourceKind } from '../hydraulics/types.ts';
import { BTU_PER_HOUR, CFM, FOOT, formatLarge, formatNumber } from '../units/index.ts';
import { words } from '../words/index.ts';

const told = words.required.rules;

const says = words.required.own;

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
  /** What the job goes by: its own airflow where it has one, else the rule that asks for most. */
  readonly governing: AirflowRule;
  /** The rule that would govern; null where it does. */
  readonly overruled: AirflowRule | null;
}

const GUIDE = told.guide;

/**
 * The airflow that the cooktop asks for, by every rule that applies, and the one that governs (the largest, or the
 * job's own in its place), m3/s. Guidance for residential cooking; the adopted code and the hood's instructions decide.
 */
export function requiredAirflow(kitchen: Job['kitchen']): RequiredAirflow {
  const minimum: AirflowRule = {
    id: 'code-minimum',
    name: told.codeMinimum,
    flow: 100 * CFM,
    because: told.codeMinimumWhy,
    source: told.codeMinimumSource,
    sourceKind: 'found',
  };
  const rules = [minimum, ...cooktopRules(kitchen.cooktop)];
  const largest = rules.reduce((most, rule) => (rule.flow > most.flow ? rule : most));
  const own = ownRule(kitchen.requiredAirflow);
  if (!own) return { rules, governing: largest, overruled: null };
  return { rules: [...rules, own], governing: own, overruled: largest };
}

function ownRule(own: Job['kitchen']['requiredAirflow']): AirflowRule | null {
  if (!own) return null;
  return {
    id: 'own',
    name: says.name,
    flow: own.flow,
    because: own.reason,
    source: says.source,
    sourceKind: 'assumption',
  };
}

function cooktopRules(cooktop: Job['kitchen']['cooktop']): AirflowRule[] {
  if (!cooktop) return [];
  const feet = cooktop.width / FOOT;
  const wall = cooktop.placement === 'wall';
  const perFoot = wall ? 100 : 150;
  const minimumPerFoot = wall ? 40 : 50;
  const per = wall ? told.against : told.open;
  const rules: AirflowRule[] = [
    {
      id: 'width',
      name: told.width,
      flow: perFoot * feet * CFM,
      because: per(perFoot, formatNumber(feet, 1)),
      source: GUIDE,
      sourceKind: 'found',
    },
    {
      id: 'width-minimum',
      name: told.leastWidth,
      flow: minimumPerFoot * feet * CFM,
      because: per(minimumPerFoot, formatNumber(feet, 1)),
      source: told.leastWidthSource,
      sourceKind: 'memory',
    },
  ];
  if (cooktop.fuel === 'gas' && cooktop.heatInput) {
    const btu = cooktop.heatInput / BTU_PER_HOUR;
    rules.push({
      id: 'heat-input',
      name: told.heat,
      flow: (btu / 100) * CFM,
      because: told.heatWhy(formatLarge(Math.round(btu / 100) * 100)),
      source: told.heatSource,
      sourceKind: 'found',
    });
  }
  return rules;
}

/** How the required airflow comes about: every rule that applies, and the largest. */
export function requiredDerivation(kitchen: Job['kitchen']): Derivation {
  const { rules, governing, overruled } = requiredAirflow(kitchen);
  return {
    ref: { figure: 'required airflow', speed: 0 },
    title: told.title,
    symbol: 'Q_need',
    value: governing.flow,
    unit: 'm³/s',
    kind: 'flow',
    formula: overruled ? says.formula : told.formula(rules.map((_, i) => `Q_${i + 1}`).join(', ')),
    inputs: rules.map(({ name, flow }, i) => ({
      symbol: overruled && i === rules.length - 1 ? 'Q_own' : `Q_${i + 1}`,
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
    notes: [told.governed(governing.name, governing.because)],
  };
}
