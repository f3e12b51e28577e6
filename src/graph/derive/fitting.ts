import { formatNumber } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { densityInput } from './air.ts';
import { coefficientOf, velocityInput } from './coefficient.ts';
import { type Derivation, type DerivationInput, type Figure, formulaSource } from './derivation.ts';
import { lossPerMetreInput } from './leg.ts';
import type { Scene } from './scene.ts';

const say = words.derivation.fitting;

const localLoss = formulaSource('local-loss', say.source);

type Fitting = NonNullable<ReturnType<Scene['fitting']>>;

/** How each figure of a fitting comes about. */
export const fittingFigures = {
  'fitting loss': (scene, fitting) => ({
    ref: { figure: 'fitting loss', speed: scene.speed, at: fitting.result.id },
    title: say.loss(place(scene, fitting)),
    symbol: 'Δp',
    value: fitting.result.loss,
    unit: 'Pa',
    kind: 'pressure',
    formula: 'Δp = C · ρ V² / 2',
    inputs: [coefficientInput(scene, fitting), densityInput(scene), velocityInput(fitting)],
    sources: [localLoss, fitting.result.provenance],
    notes: (fitting.result.buildUp ?? []).map((part) =>
      say.ofWhich(part.label, formatNumber(part.c, 3), formatNumber(part.loss, 2)),
    ),
  }),
  coefficient: (scene, fitting) => ({
    ref: { figure: 'coefficient', speed: scene.speed, at: fitting.result.id },
    title: say.coefficient(place(scene, fitting)),
    symbol: 'C',
    value: fitting.result.c,
    unit: '',
    ...coefficientOf(scene, fitting),
    sources: [fitting.result.provenance],
  }),
  'equivalent length': (scene, fitting) => {
    const leg = scene.leg(fitting.leg.id);
    return {
      ref: { figure: 'equivalent length', speed: scene.speed, at: fitting.result.id },
      title: say.equivalentLength(place(scene, fitting)),
      symbol: 'L_e',
      value: fitting.result.equivalentLength,
      unit: 'm',
      kind: 'run',
      formula: 'L_e = Δp / R',
      inputs: [
        {
          symbol: 'Δp',
          name: say.lossOf,
          value: fitting.result.loss,
          unit: 'Pa',
          kind: 'pressure',
          ref: { figure: 'fitting loss', speed: scene.speed, at: fitting.result.id },
        },
        ...(leg ? [lossPerMetreInput(scene, leg)] : []),
      ],
      sources: [localLoss],
      notes: [say.collarNote],
    };
  },
} as const satisfies Partial<Record<Figure, (scene: Scene, fitting: Fitting) => Derivation>>;

function place(scene: Scene, { result }: Fitting): string {
  const where = scene.solution.route.nodes.has(result.at)
    ? scene.places.node(result.at)
    : scene.places.leg(result.at);
  return say.at(result.label, where);
}

function coefficientInput(scene: Scene, { result }: Fitting): DerivationInput {
  return {
    symbol: 'C',
    name: say.coefficientOf,
    value: result.c,
    unit: '',
    ref: { figure: 'coefficient', speed: scene.speed, at: result.id },
  };
}
