import { fanTotalPressure } from '../../hydraulics/fan.ts';
import { formatNumber } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import type { Hood } from '../document.ts';
import { placedBoosters, settingOf } from '../setting.ts';
import { speedCurve } from '../speeds.ts';
import { densityInput } from './air.ts';
import { type Derivation, type DerivationInput, formulaSource } from './derivation.ts';
import type { Scene } from './scene.ts';

const say = words.derivation.fan;

export const airflowTest = formulaSource('static-basis', say.testSource);

/** How the pressure of a fan in the run comes about; undefined where none stands at that node. */
export function boosterPressure(scene: Scene, node: string | undefined): Derivation | undefined {
  const booster = scene.solved.boosters.find((candidate) => candidate.node === node);
  if (!booster) return undefined;
  const { name, speed, flow, pressure } = booster;
  const fan = placedBoosters(scene.scheme, scene.job.hoods, scene.solution.route).find(
    (place) => place.node === node,
  )?.hood;
  if (!fan) return undefined;
  const index = settingOf(fan, scene.result.speed);
  const through: DerivationInput = {
    symbol: 'Q',
    name: say.flow,
    value: flow,
    unit: 'm³/s',
    kind: 'flow',
  };
  const told = fanPressure(scene, fan, index, through);
  return {
    ref: { figure: 'booster pressure', speed: scene.speed, at: booster.node },
    title: say.title(name, speed),
    symbol: 'p_b',
    value: pressure,
    unit: 'Pa',
    kind: 'pressure',
    ...told,
    formula: `p_b = ${told.formula}`,
    notes: [say.fits, ...curveNotes(scene, fan, index)],
  };
}

/** What a fan gives at a flow: its curve's pressure in the air that is there, and what its basis leaves out. */
export function fanPressure(
  scene: Scene,
  fan: Hood,
  index: number,
  through: DerivationInput,
): Pick<Derivation, 'formula' | 'inputs' | 'sources'> {
  const { air } = scene.solution;
  const speed = speedCurve(fan, index);
  const curve = speed.known ? speed.curve : undefined;
  const ofStatic = curve?.basis === 'static';
  const flow = through.value;
  const velocityPart = ofStatic ? (air.density * (flow / curve.collarArea) ** 2) / 2 : 0;
  const corrected = curve ? fanTotalPressure(curve, flow, air) - velocityPart : 0;
  const rated = curve?.density ?? air.density;
  const symbol = ofStatic ? 'p_s' : 'p';
  return {
    formula: ofStatic ? 'p_s ρ/ρ_r + ρ (Q/A_c)² / 2' : 'p ρ/ρ_r',
    inputs: [
      {
        symbol,
        name: say.fromCurve,
        value: (corrected * rated) / air.density,
        unit: 'Pa',
        kind: 'pressure',
      },
      { symbol: 'ρ_r', name: say.rated, value: rated, unit: 'kg/m³', kind: 'density' },
      densityInput(scene),
      through,
      ...(ofStatic
        ? [
            {
              symbol: 'A_c',
              name: say.collar,
              value: curve.collarArea,
              unit: 'm²',
              kind: 'area' as const,
            },
          ]
        : []),
    ],
    sources: ofStatic ? [airflowTest] : [],
  };
}

/** The hood of a scene. */
export function hoodOf({ job, result }: Scene): Hood {
  return job.hoods.find((hood) => hood.id === result.hood) as Hood;
}

/** What had to be assumed for the curve, and how it is read between its points. */
export function curveNotes(
  scene: Scene,
  fan: Hood = hoodOf(scene),
  index: number = scene.result.speed,
): string[] {
  const speed = speedCurve(fan, index);
  if (!speed.known) return [speed.reason];
  const { points, interpolation = 'monotone-cubic' } = speed.curve;
  const printed = points.map(([q, p]) => say.point(formatNumber(q, 4), formatNumber(p, 1))).join('; ');
  return [...speed.assumptions, say.curve[interpolation](points.length, printed)];
}
