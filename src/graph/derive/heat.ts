import { dewPoint, overallTransfer, WRAP_CONDUCTIVITY } from '../../hydraulics/heat.ts';
import { perimeter } from '../../hydraulics/section.ts';
import { formatDiameter } from '../../units/index.ts';
import { densityInput } from './air.ts';
import { type Derivation, type DerivationInput, type Figure, formulaSource } from './derivation.ts';
import type { Scene } from './scene.ts';

const cooling = formulaSource(
  'cooling-duct',
  'Heat balance of air in a duct in colder surroundings; films 20 and 9 W/(m²·K), wrap 0.04 W/(m·K)',
);
const magnus = formulaSource('dew-point', 'WMO form of the Magnus formula', 'memory');

type Leg = NonNullable<ReturnType<Scene['leg']>>;

/** How the temperatures of a leg come about. */
export const heatFigures = {
  'inlet temperature': (scene, leg) => ({
    ...head(scene, leg, 'inlet temperature', leg.result.inletTemperature, 'T_0'),
    formula: 'the temperature of the kitchen at a hood; where streams meet, Σ Q T / Σ Q of those that arrive',
    inputs: [kitchenInput(scene)],
    sources: [cooling],
    notes: ['Cooking warms the air above the kitchen; that is left out, which is on the cold side.'],
  }),
  'outlet temperature': (scene, leg) => ({
    ...head(scene, leg, 'outlet temperature', leg.result.outletTemperature, 'T'),
    formula:
      'T = T_a + (T_0 − T_a) exp(−U P x / (ρ Q c_p)) over the cold stretches x; unchanged in the warm ones',
    inputs: [
      inletInput(scene, leg),
      outdoorsInput(scene),
      transferInput(scene, leg),
      { symbol: 'P', name: 'inside perimeter', value: perimeter(leg.plan.section), unit: 'm', kind: 'run' },
      densityInput(scene),
      { symbol: 'Q', name: 'air in the leg', value: Math.abs(leg.result.flow), unit: 'm³/s', kind: 'flow' },
    ],
    sources: [cooling],
    notes: [
      'Cold is duct above the top ceiling and beyond an outside wall or roof; it stands in air of the outdoor temperature.',
    ],
  }),
  'wall temperature': (scene, leg) => {
    const { risk, insulation } = leg.result.condensation;
    return {
      ...head(scene, leg, 'wall temperature', leg.result.wallTemperature, 'T_w'),
      formula:
        'T_w = T − (U / 20) (T − T_a) at the cold end of the coldest stretch; T_0 where no stretch is cold',
      inputs: [
        {
          symbol: 'T',
          name: 'air where it leaves the leg',
          value: leg.result.outletTemperature,
          unit: '°C',
          kind: 'temperature',
          ref: { figure: 'outlet temperature', speed: scene.speed, at: leg.plan.id },
        },
        outdoorsInput(scene),
        transferInput(scene, leg),
        {
          symbol: 'T_d',
          name: 'dew point of the kitchen air',
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
              ? 'Below the dew point, and no insulation up to 150 mm prevents it.'
              : `Below the dew point; ${formatDiameter(insulation, scene.job.units)} of insulation (${WRAP_CONDUCTIVITY} W/(m·K)) prevents it.`,
          ]
        : ['Above the dew point: no water settles.'],
    };
  },
} as const satisfies Partial<Record<Figure, (scene: Scene, leg: Leg) => Derivation>>;

/** Dew point of the kitchen's air, °C. */
export function dewPointFigure(scene: Scene): Derivation {
  return {
    ref: { figure: 'dew point', speed: scene.speed },
    title: 'Dew point of the kitchen air',
    symbol: 'T_d',
    value: dewOf(scene),
    unit: '°C',
    kind: 'temperature',
    formula: 'T_d = 243.12 γ / (17.62 − γ), γ = ln φ + 17.62 t / (243.12 + t)',
    inputs: [
      kitchenInput(scene),
      { symbol: 'φ', name: 'relative humidity', value: scene.job.air.humidity, unit: '' },
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
    title: `${figure.charAt(0).toUpperCase()}${figure.slice(1)}, ${scene.places.leg(leg.plan.id)}`,
    symbol,
    value,
    unit: '°C',
    kind: 'temperature' as const,
  };
}

function inletInput(scene: Scene, leg: Leg): DerivationInput {
  return {
    symbol: 'T_0',
    name: 'air where it enters the leg',
    value: leg.result.inletTemperature,
    unit: '°C',
    kind: 'temperature',
    ref: { figure: 'inlet temperature', speed: scene.speed, at: leg.plan.id },
  };
}

function kitchenInput({ job }: Scene): DerivationInput {
  return {
    symbol: 't',
    name: 'air temperature',
    value: job.air.temperature,
    unit: '°C',
    kind: 'temperature',
  };
}

function outdoorsInput({ job }: Scene): DerivationInput {
  const value = job.air.outdoorTemperature;
  return { symbol: 'T_a', name: 'outdoor temperature', value, unit: '°C', kind: 'temperature' };
}

function transferInput(scene: Scene, leg: Leg): DerivationInput {
  const insulation = scene.solution.route.segments.get(leg.plan.id)?.insulation ?? 0;
  const value = overallTransfer({ hydraulicDiameter: leg.plan.hydraulicDiameter, insulation });
  return { symbol: 'U', name: 'heat transfer through the wall', value, unit: 'W/(m²·K)' };
}
