import { words } from '../../words/index.ts';
import { densityInput } from './air.ts';
import { type Derivation, type DerivationInput, type Figure, formulaSource } from './derivation.ts';
import type { Scene } from './scene.ts';

const say = words.derivation.leg;

const darcy = formulaSource('darcy-weisbach', say.darcySource);
const colebrook = formulaSource('colebrook', say.colebrookSource);

type Leg = NonNullable<ReturnType<Scene['leg']>>;

const symbols = {
  flow: 'Q',
  velocity: 'V',
  'velocity pressure': 'p_v',
  'Reynolds number': 'Re',
  'friction factor': 'f',
  'friction length': 'L',
  'friction loss': 'Δp_f',
  'loss per metre': 'R',
} as const satisfies Partial<Record<Figure, string>>;

/** How each figure of a leg comes about. */
export const legFigures = {
  velocity: (scene, leg) => ({
    ...head(scene, leg, 'velocity', leg.result.velocity, 'm/s'),
    kind: 'velocity',
    formula: 'V = Q / A',
    inputs: [flowInput(leg), areaInput(leg)],
  }),
  'velocity pressure': (scene, leg) => ({
    ...head(scene, leg, 'velocity pressure', leg.result.velocityPressure, 'Pa'),
    kind: 'pressure',
    formula: 'p_v = ρ V² / 2',
    inputs: [densityInput(scene), velocityInput(scene, leg)],
  }),
  'Reynolds number': (scene, leg) => ({
    ...head(scene, leg, 'Reynolds number', leg.result.reynolds, ''),
    formula: 'Re = ρ V D / μ',
    inputs: [
      densityInput(scene),
      velocityInput(scene, leg),
      diameterInput(leg),
      {
        symbol: 'μ',
        name: say.viscosity,
        value: scene.solution.air.viscosity,
        unit: 'Pa·s',
        ref: { figure: 'viscosity', speed: scene.speed },
      },
    ],
  }),
  'friction factor': (scene, leg) => ({
    ...head(scene, leg, 'friction factor', leg.result.frictionFactor, ''),
    formula: say.frictionFormula,
    inputs: [
      figureInput(scene, leg, 'Reynolds number', {
        name: words.derivation.figures['Reynolds number'],
        value: leg.result.reynolds,
        unit: '',
      }),
      { symbol: 'ε', name: say.roughness, value: leg.plan.duct.roughness, unit: 'm' },
      diameterInput(leg),
    ],
    sources: [colebrook, leg.plan.provenance],
  }),
  'friction length': (scene, leg) => {
    const { route } = scene.solution;
    const own = route.segments.get(leg.plan.id);
    const start = route.nodes.get(leg.plan.from)?.transition;
    const taper = start?.downstream === leg.plan.id ? start.length : 0;
    return {
      ...head(scene, leg, 'friction length', leg.plan.duct.length, 'm'),
      kind: 'run',
      formula: 'L = s + t + a',
      inputs: [
        { symbol: 's', name: say.straight, value: own?.straight ?? 0, unit: 'm', kind: 'run' },
        { symbol: 't', name: say.taper, value: taper, unit: 'm', kind: 'run' },
        {
          symbol: 'a',
          name: say.arc,
          value: leg.plan.duct.length - (own?.straight ?? 0) - taper,
          unit: 'm',
          kind: 'run',
        },
      ],
      notes: [say.lengthNote, say.arcNote],
    };
  },
  'friction loss': (scene, leg) => ({
    ...head(scene, leg, 'friction loss', leg.result.frictionLoss, 'Pa'),
    kind: 'pressure',
    formula: 'Δp_f = m · f · (L / D) · p_v',
    inputs: [
      multiplierInput(leg),
      frictionFactorInput(scene, leg),
      figureInput(scene, leg, 'friction length', {
        name: say.length,
        value: leg.plan.duct.length,
        unit: 'm',
        kind: 'run',
      }),
      diameterInput(leg),
      velocityPressureInput(scene, leg),
    ],
    sources: [darcy, leg.plan.provenance],
  }),
  'loss per metre': (scene, leg) => ({
    ...head(scene, leg, 'loss per metre', leg.result.lossPerMetre, 'Pa/m'),
    kind: 'lossRate',
    formula: 'R = m · f · p_v / D',
    inputs: [
      multiplierInput(leg),
      frictionFactorInput(scene, leg),
      velocityPressureInput(scene, leg),
      diameterInput(leg),
    ],
    sources: [darcy, leg.plan.provenance],
  }),
} as const satisfies Partial<Record<Figure, (scene: Scene, leg: Leg) => Derivation>>;

function head(scene: Scene, leg: Leg, figure: keyof typeof symbols, value: number, unit: string) {
  return {
    ref: { figure, speed: scene.speed, at: leg.plan.id },
    title: say.titles[figure](scene.places.leg(leg.plan.id)),
    symbol: symbols[figure],
    value,
    unit,
    sources: [],
    notes: [],
  };
}

/** A figure of a leg as an input of another figure. */
function figureInput(
  scene: Scene,
  leg: Leg,
  figure: keyof typeof symbols,
  told: Pick<DerivationInput, 'name' | 'value' | 'unit' | 'kind'>,
): DerivationInput {
  return { symbol: symbols[figure], ...told, ref: { figure, speed: scene.speed, at: leg.plan.id } };
}

/** The loss per metre of a leg as an input of another figure. */
export function lossPerMetreInput(scene: Scene, leg: Leg): DerivationInput {
  const { lossPerMetre: value } = leg.result;
  return figureInput(scene, leg, 'loss per metre', {
    name: say.adjoining,
    value,
    unit: 'Pa/m',
    kind: 'lossRate',
  });
}

function flowInput(leg: Leg): DerivationInput {
  return {
    symbol: 'Q',
    name: say.air,
    value: Math.abs(leg.result.flow),
    unit: 'm³/s',
    kind: 'flow',
  };
}

function areaInput(leg: Leg): DerivationInput {
  return { symbol: 'A', name: say.area, value: leg.plan.area, unit: 'm²', kind: 'area' };
}

function velocityInput(scene: Scene, leg: Leg): DerivationInput {
  const { velocity: value } = leg.result;
  return figureInput(scene, leg, 'velocity', { name: say.velocity, value, unit: 'm/s', kind: 'velocity' });
}

function velocityPressureInput(scene: Scene, leg: Leg): DerivationInput {
  const { velocityPressure: value } = leg.result;
  const name = say.velocityPressure;
  return figureInput(scene, leg, 'velocity pressure', { name, value, unit: 'Pa', kind: 'pressure' });
}

function frictionFactorInput(scene: Scene, leg: Leg): DerivationInput {
  const { frictionFactor: value } = leg.result;
  return figureInput(scene, leg, 'friction factor', { name: say.frictionFactor, value, unit: '' });
}

function diameterInput(leg: Leg): DerivationInput {
  return {
    symbol: 'D',
    name: leg.plan.section.shape === 'round' ? say.inside : say.hydraulic,
    value: leg.plan.hydraulicDiameter,
    unit: 'm',
    kind: 'run',
  };
}

function multiplierInput(leg: Leg): DerivationInput {
  return {
    symbol: 'm',
    name: say.slack,
    value: leg.plan.duct.multiplier,
    unit: '',
  };
}
