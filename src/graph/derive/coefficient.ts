import { reynoldsFactor, seatFlow } from '../../hydraulics/element.ts';
import { area } from '../../hydraulics/section.ts';
import type { LossPart } from '../../hydraulics/types.ts';
import { formatTrimmed } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import type { FittingResult } from '../solution.ts';
import { densityInput } from './air.ts';
import type { Derivation, DerivationInput } from './derivation.ts';
import type { Scene } from './scene.ts';

const say = words.derivation.coefficient;

type Fitting = NonNullable<ReturnType<Scene['fitting']>>;
type Told = Pick<Derivation, 'formula' | 'inputs' | 'notes'>;

/** What one part of a fitting adds to its coefficient, in symbols. */
interface Term {
  readonly symbols: string;
  readonly inputs: readonly DerivationInput[];
  /** Also needs density and velocity. */
  readonly pressure?: boolean;
  readonly notes?: readonly string[];
}

/** How the loss coefficient of a fitting comes about at the flow that is there. */
export function coefficientOf(scene: Scene, fitting: Fitting): Told {
  const { plan, result } = fitting;
  const { notes } = result.provenance;
  if (result.junction)
    return { ...junctionC(result, result.junction), notes: [...notes, ...junctionNotes(result.junction)] };
  const parts = plan?.loss.parts ?? [];
  if (result.velocity === 0 || parts.length === 0)
    return {
      formula: 'C = C_row',
      inputs: [{ symbol: 'C_row', name: say.row, value: result.c, unit: '' }],
      notes,
    };
  const terms = parts.map((part, i) => termOf(scene, fitting, part, parts.length > 1 ? `_${i + 1}` : ''));
  const whole = area(result.section);
  const ofOtherArea = parts.some((part) => 'area' in part && !sameArea(part.area, whole));
  const ofPressure = terms.some(({ pressure }) => pressure);
  return {
    formula: `C = ${terms.map(({ symbols }) => symbols).join(' + ')}`,
    inputs: [
      ...terms.flatMap(({ inputs }) => inputs),
      ...(ofOtherArea ? [areaInput('A', say.area, whole)] : []),
      ...(ofPressure ? [densityInput(scene), velocityInput(fitting)] : []),
    ],
    notes: [...notes, ...terms.flatMap((term) => term.notes ?? [])],
  };
}

/** Velocity that a fitting's coefficient is taken with. */
export function velocityInput({ result }: Pick<Fitting, 'result'>): DerivationInput {
  return {
    symbol: 'V',
    name: say.velocity,
    value: result.velocity,
    unit: 'm/s',
    kind: 'velocity',
  };
}

function termOf(scene: Scene, { result, leg, plan }: Fitting, part: LossPart, n: string): Term {
  const label = n === '' ? undefined : plan?.loss.buildUp?.[Number(n.slice(1)) - 1];
  const symbol = n === '' ? 'C_row' : `C${n}`;
  const c = (value: number): DerivationInput => ({
    symbol,
    name: label === undefined ? say.row : say.part(label),
    value,
    unit: '',
  });
  const whole = area(result.section);
  const onOwn = 'area' in part && !sameArea(part.area, whole);
  const ratio = onOwn ? ` (A/A${n || '_o'})²` : '';
  const own = onOwn ? [areaInput(`A${n || '_o'}`, say.partArea(label ?? result.label), part.area)] : [];
  switch (part.kind) {
    case 'local':
      return { symbols: `${symbol}${ratio}`, inputs: [c(part.c), ...own] };
    case 'reynolds-local': {
      const { air } = scene.solution;
      const re = (air.density * (Math.abs(result.flow) / part.area) * part.hydraulicDiameter) / air.viscosity;
      const pairs = part.reynolds.map((at, i) =>
        say.pair(formatTrimmed(at, 0), formatTrimmed(part.factor[i] ?? 1, 3)),
      );
      return {
        symbols: `${symbol} K${ratio}`,
        inputs: [
          c(part.c),
          { symbol: 'K', name: say.correction, value: reynoldsFactor(part, re), unit: '' },
          { symbol: 'Re', name: say.reynolds, value: re, unit: '' },
          ...own,
        ],
        notes: [say.correctionNote(pairs.join('; '))],
      };
    }
    case 'flap':
      return {
        symbols: `${symbol}${ratio} + p_f Q / (√(Q² + Q_s²) ρ V²/2)`,
        inputs: [
          c(part.c),
          ...own,
          { symbol: 'p_f', name: say.holds, value: part.openingPressure, unit: 'Pa', kind: 'pressure' },
          { symbol: 'Q', name: say.flow, value: Math.abs(result.flow), unit: 'm³/s', kind: 'flow' },
          {
            symbol: 'Q_s',
            name: say.leak,
            value: seatFlow(part, scene.solution.air),
            unit: 'm³/s',
            kind: 'flow',
          },
        ],
        pressure: true,
      };
    case 'measured':
      return {
        symbols: 'p_m (ρ/ρ_m) (Q/Q_m)² / (ρ V²/2)',
        inputs: [
          { symbol: 'p_m', name: say.measuredLoss, value: part.loss, unit: 'Pa', kind: 'pressure' },
          { symbol: 'Q', name: say.flow, value: Math.abs(result.flow), unit: 'm³/s', kind: 'flow' },
          { symbol: 'Q_m', name: say.measuredFlow, value: part.atFlow, unit: 'm³/s', kind: 'flow' },
          { symbol: 'ρ_m', name: say.measuredDensity, value: part.density, unit: 'kg/m³', kind: 'density' },
        ],
        pressure: true,
      };
    default: {
      const segment = scene.solved.segments.get(leg.id);
      return {
        symbols: 'm f L / D',
        inputs: [
          { symbol: 'm', name: say.multiplier, value: leg.duct.multiplier, unit: '' },
          {
            symbol: 'f',
            name: say.friction,
            value: segment?.frictionFactor ?? 0,
            unit: '',
            ref: { figure: 'friction factor', speed: scene.speed, at: leg.id },
          },
          {
            symbol: 'L',
            name: say.likeDuct,
            value: part.kind === 'duct' ? part.length : 0,
            unit: 'm',
            kind: 'run',
          },
          { symbol: 'D', name: say.diameter, value: leg.hydraulicDiameter, unit: 'm', kind: 'run' },
        ],
      };
    }
  }
}

type Junction = NonNullable<FittingResult['junction']>;

function junctionC(result: FittingResult, junction: Junction): Pick<Told, 'formula' | 'inputs'> {
  const { way, converging, flowRatio, areaRatio, angle } = junction;
  return {
    formula: junctionFormulas[converging ? 'joining' : 'dividing'][way],
    inputs: [
      { symbol: 'q', name: say.flowRatio, value: flowRatio, unit: '' },
      { symbol: 'a', name: say.areaRatio, value: areaRatio, unit: '' },
      { symbol: 'α', name: say.branchAngle, value: angle, unit: '°' },
      velocityInput({ result }),
    ],
  };
}

const junctionFormulas = {
  joining: {
    branch: say.branchFormula,
    straight: say.straightFormula,
  },
  dividing: {
    branch: say.dividingFormula,
    straight: 'C = 0.4 q²',
  },
} as const;

function junctionNotes({ way, converging }: Junction): string[] {
  return [say.ranges, ...(way === 'branch' ? [say.nearRest(converging ? '−1' : '1')] : [])];
}

function areaInput(symbol: string, name: string, value: number): DerivationInput {
  return { symbol, name, value, unit: 'm²', kind: 'area' };
}

function sameArea(a: number, b: number): boolean {
  return Math.abs(a / b - 1) < 1e-9;
}
