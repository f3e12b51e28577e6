import { CP, dewPoint, overallTransfer, WRAP_CONDUCTIVITY } from '../../hydraulics/heat.ts';
import { perimeter } from '../../hydraulics/section.ts';
import { formatDiameter } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { coldLength } from '../heat.ts';
import { placedHoods } from '../setting.ts';
import { densityInput } from './air.ts';
import { type Derivation, type DerivationInput, type Figure, formulaSource } from './derivation.ts';
import type { Scene } from './scene.ts';

const say = words.derivation.heat;
const cooling = formulaSource('cooling-duct', say.source);
const magnus = formulaSource('dew-point', say.magnusSource, 'memory');

type Leg = NonNullable<ReturnType<Scene['leg']>>;

/** How the temperatures of a leg come about. */
export const heatFigures = {
  'heat transfer': (scene, leg) => ({
    ref: { figure: 'heat transfer', speed: scene.speed, at: leg.plan.id },
    title: say.through(scene.places.leg(leg.plan.id)),
    symbol: 'U',
    value: transferOf(scene, leg),
    unit: 'W/(m²·K)',
    formula: 'U = 1 / (1/20 + r ln(1 + δ/r) / 0.04 + r / (9 (r + δ))), r = D/2',
    inputs: [
      { symbol: 'D', name: say.diameter, value: leg.plan.hydraulicDiameter, unit: 'm', kind: 'run' },
      { symbol: 'δ', name: say.insulation, value: insulationOf(scene, leg), unit: 'm', kind: 'run' },
    ],
    sources: [cooling],
    notes: [],
  }),
  'inlet temperature': (scene, leg) => {
    const { formula, inputs } = inletFrom(scene, leg);
    return {
      ...head(scene, leg, 'inlet temperature', leg.result.inletTemperature, 'T_0'),
      formula,
      inputs,
      sources: [cooling],
      notes: [say.cookingNote],
    };
  },
  'outlet temperature': (scene, leg) => ({
    ...head(scene, leg, 'outlet temperature', leg.result.outletTemperature, 'T'),
    formula: 'T = T_a + (T_0 − T_a) exp(−U P x / (ρ Q c_p))',
    inputs: [
      inletInput(scene, leg),
      outdoorsInput(scene),
      transferInput(scene, leg),
      { symbol: 'P', name: say.perimeter, value: perimeter(leg.plan.section), unit: 'm', kind: 'run' },
      coldInput(scene, leg),
      densityInput(scene),
      { symbol: 'Q', name: say.airIn, value: Math.abs(leg.result.flow), unit: 'm³/s', kind: 'flow' },
      { symbol: 'c_p', name: say.specific, value: CP, unit: 'J/(kg·K)' },
    ],
    sources: [cooling],
    notes: [say.coldNote],
  }),
  'wall temperature': (scene, leg) => {
    const { risk, insulation } = leg.result.condensation;
    return {
      ...head(scene, leg, 'wall temperature', leg.result.wallTemperature, 'T_w'),
      formula: say.wallFormula,
      inputs: [
        {
          symbol: 'T',
          name: say.leaving,
          value: leg.result.outletTemperature,
          unit: '°C',
          kind: 'temperature',
          ref: { figure: 'outlet temperature', speed: scene.speed, at: leg.plan.id },
        },
        inletInput(scene, leg),
        outdoorsInput(scene),
        transferInput(scene, leg),
        coldInput(scene, leg),
        {
          symbol: 'T_d',
          name: say.dewPointOf,
          value: dewOf(scene),
          unit: '°C',
          kind: 'temperature',
          ref: { figure: 'dew point', speed: scene.speed },
        },
      ],
      sources: [cooling, magnus],
      notes: risk
        ? [
            insulation === null
              ? say.noInsulation
              : say.insulate(formatDiameter(insulation, scene.job.units), WRAP_CONDUCTIVITY),
          ]
        : [say.dry],
    };
  },
} as const satisfies Partial<Record<Figure, (scene: Scene, leg: Leg) => Derivation>>;

/** Dew point of the kitchen's air, °C. */
export function dewPointFigure(scene: Scene): Derivation {
  return {
    ref: { figure: 'dew point', speed: scene.speed },
    title: say.dewPoint,
    symbol: 'T_d',
    value: dewOf(scene),
    unit: '°C',
    kind: 'temperature',
    formula: 'T_d = 243.12 γ / (17.62 − γ), γ = ln φ + 17.62 t / (243.12 + t)',
    inputs: [
      kitchenInput(scene),
      { symbol: 'φ', name: say.humidity, value: scene.job.air.humidity, unit: '' },
    ],
    sources: [magnus],
    notes: [],
  };
}

function dewOf({ job }: Scene): number {
  return dewPoint(job.air.temperature, job.air.humidity);
}

function head(
  scene: Scene,
  leg: Leg,
  figure: 'inlet temperature' | 'outlet temperature' | 'wall temperature',
  value: number,
  symbol: string,
) {
  return {
    ref: { figure, speed: scene.speed, at: leg.plan.id },
    title: say.titles[figure](scene.places.leg(leg.plan.id)),
    symbol,
    value,
    unit: '°C',
    kind: 'temperature' as const,
  };
}

function inletInput(scene: Scene, leg: Leg): DerivationInput {
  return {
    symbol: 'T_0',
    name: say.entering,
    value: leg.result.inletTemperature,
    unit: '°C',
    kind: 'temperature',
    ref: { figure: 'inlet temperature', speed: scene.speed, at: leg.plan.id },
  };
}

function kitchenInput({ job }: Scene): DerivationInput {
  return {
    symbol: 't',
    name: say.air,
    value: job.air.temperature,
    unit: '°C',
    kind: 'temperature',
  };
}

function outdoorsInput({ job }: Scene): DerivationInput {
  const value = job.air.outdoorTemperature;
  return { symbol: 'T_a', name: say.outdoor, value, unit: '°C', kind: 'temperature' };
}

/** Where the air of a leg comes from: the kitchen at a hood, else the legs that bring it. */
function inletFrom(scene: Scene, leg: Leg): { formula: string; inputs: DerivationInput[] } {
  const { route } = scene.solution;
  const arriving = (route.nodes.get(leg.plan.from)?.segments ?? []).flatMap((id) => {
    const one = scene.leg(id);
    return one && one.plan.to === leg.plan.from && one.result.flow > 0 ? [one] : [];
  });
  if (arriving.length === 0) return { formula: 'T_0 = t', inputs: [kitchenInput(scene)] };
  const several = arriving.length > 1;
  const numbers = arriving.map((_, i) => (several ? `_${i + 1}` : ''));
  const mixed = `(${numbers.map((n) => `Q${n} T${n}`).join(' + ')}) / (${numbers.map((n) => `Q${n}`).join(' + ')})`;
  return {
    formula: several ? `T_0 = ${mixed}` : 'T_0 = T',
    inputs: arriving.flatMap(({ plan: { id }, result }, i): DerivationInput[] => [
      ...(several
        ? [
            {
              symbol: `Q${numbers[i]}`,
              name: say.flowOf(scene.places.leg(id)),
              value: result.flow,
              unit: 'm³/s',
              kind: 'flow' as const,
            },
          ]
        : []),
      {
        symbol: `T${numbers[i]}`,
        name: say.arriving(scene.places.leg(id)),
        value: result.outletTemperature,
        unit: '°C',
        kind: 'temperature',
        ref: { figure: 'outlet temperature', speed: scene.speed, at: id },
      },
    ]),
  };
}

function coldInput(scene: Scene, leg: Leg): DerivationInput {
  const { job, solution, result } = scene;
  const hood =
    placedHoods(scene.scheme, job.hoods).find((place) => place.hood.id === result.hood)?.node ?? '';
  const value = coldLength({ route: solution.route, job }, hood, leg.plan.id);
  return { symbol: 'x', name: say.cold, value, unit: 'm', kind: 'run' };
}

function insulationOf({ solution }: Scene, leg: Leg): number {
  return solution.route.segments.get(leg.plan.id)?.insulation ?? 0;
}

function transferOf(scene: Scene, leg: Leg): number {
  return overallTransfer({
    hydraulicDiameter: leg.plan.hydraulicDiameter,
    insulation: insulationOf(scene, leg),
  });
}

function transferInput(scene: Scene, leg: Leg): DerivationInput {
  return {
    symbol: 'U',
    name: say.transfer,
    value: transferOf(scene, leg),
    unit: 'W/(m²·K)',
    ref: { figure: 'heat transfer', speed: scene.speed, at: leg.plan.id },
  };
}
