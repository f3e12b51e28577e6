import { area } from '../../hydraulics/section.ts';
import { words } from '../../words/index.ts';
import { labelFlow } from '../speeds.ts';
import { densityInput } from './air.ts';
import { type Derivation, type DerivationInput, type Figure, formulaSource } from './derivation.ts';
import { airflowTest, curveNotes, fanPressure, hoodOf } from './fan.ts';
import type { Scene } from './scene.ts';

const say = words.derivation.hood;

const operatingPoint = formulaSource('operating-point', say.source);
/** How each figure of a hood at one speed comes about. */
export const hoodFigures = {
  flow: (scene) => {
    const { path, segments } = scene.solved;
    const on = new Set(path);
    const friction = path.reduce((sum, id) => sum + (segments.get(id)?.frictionLoss ?? 0), 0);
    const fittings = scene.solved.fittings.reduce(
      (sum, fitting) => sum + (on.has(fitting.segment) ? fitting.loss : 0),
      0,
    );
    return {
      ref: { figure: 'flow', speed: scene.speed },
      title: say.delivered(scene.result.hoodName, scene.result.name),
      symbol: 'Q',
      value: scene.solved.flow,
      unit: 'm³/s',
      kind: 'flow',
      formula: say.balance(givenSymbols(scene)),
      inputs: [
        ...givenInputs(scene),
        ...roomInput(scene),
        {
          symbol: 'Σ Δp_f',
          name: say.friction,
          value: friction,
          unit: 'Pa',
          kind: 'pressure',
        },
        {
          symbol: 'Σ Δp',
          name: say.fittings,
          value: fittings,
          unit: 'Pa',
          kind: 'pressure',
        },
        ...lossesOnPath(scene),
      ],
      sources: [operatingPoint],
      notes: [
        say.solved(scene.solved.iterations, scene.solved.residual.toExponential(1)),
        ...scene.solved.stall.map((note) => note.message),
        ...roundNotes(scene),
        ...curveNotes(scene),
      ],
    };
  },
  'rated flow': (scene) => {
    const rated = hoodOf(scene).speeds[scene.result.speed];
    const label = rated && labelFlow(rated);
    return {
      ref: { figure: 'rated flow', speed: scene.speed },
      title: say.ratedFlow(scene.result.hoodName, scene.result.name),
      symbol: 'Q_r',
      value: scene.result.ratedFlow,
      unit: 'm³/s',
      kind: 'flow',
      formula: label === undefined ? say.ratedFormula : 'Q_r = Q_label',
      inputs:
        label === undefined
          ? []
          : [{ symbol: 'Q_label', name: say.label, value: label, unit: 'm³/s', kind: 'flow' }],
      sources: [],
      notes: curveNotes(scene),
    };
  },
  'share of rated': (scene) => ({
    ref: { figure: 'share of rated', speed: scene.speed },
    title: say.share(scene.result.name),
    symbol: 's',
    value: scene.solved.flow / scene.result.ratedFlow,
    unit: '',
    formula: 's = Q / Q_r',
    inputs: [
      flowInput(scene),
      {
        symbol: 'Q_r',
        name: say.rated,
        value: scene.result.ratedFlow,
        unit: 'm³/s',
        kind: 'flow',
        ref: { figure: 'rated flow', speed: scene.speed },
      },
    ],
    sources: [],
    notes: [],
  }),
  'total pressure': (scene) => {
    const hood = hoodOf(scene);
    const told = fanPressure(scene, hood, scene.result.speed, flowInput(scene));
    return {
      ref: { figure: 'total pressure', speed: scene.speed },
      title: say.total(scene.result.hoodName, scene.result.name),
      symbol: 'p_t',
      value: scene.solved.totalPressure,
      unit: 'Pa',
      kind: 'pressure',
      ...told,
      formula: `p_t = ${told.formula}`,
      notes: curveNotes(scene),
    };
  },
  'static pressure': (scene) => ({
    ref: { figure: 'static pressure', speed: scene.speed },
    title: say.static(scene.result.hoodName, scene.result.name),
    symbol: 'p_s',
    value: scene.solved.staticPressure,
    unit: 'Pa',
    kind: 'pressure',
    formula: 'p_s = p_t − ρ (Q/A_c)² / 2',
    inputs: [
      totalPressureInput(scene),
      densityInput(scene),
      flowInput(scene),
      {
        symbol: 'A_c',
        name: say.collar,
        value: area(hoodOf(scene).collar),
        unit: 'm²',
        kind: 'area',
      },
    ],
    sources: [airflowTest],
    notes: [],
  }),
} as const satisfies Partial<Record<Figure, (scene: Scene) => Derivation>>;

/** Everything that pushes the air on the hood's path, as it stands in a formula. */
function givenSymbols({ solved }: Scene): string {
  const fans = solved.boosters.map((_, i) => ` + p_b${i + 1}`).join('');
  return `p_t${fans}${solved.house ? ' + p_room' : ''}`;
}

/** The fan of the hood and the fans in its run as inputs of another figure. */
export function givenInputs(scene: Scene): DerivationInput[] {
  return [
    totalPressureInput(scene),
    ...scene.solved.boosters.map(
      (booster, i): DerivationInput => ({
        symbol: `p_b${i + 1}`,
        name: say.booster(booster.name),
        value: booster.pressure,
        unit: 'Pa',
        kind: 'pressure',
        ref: { figure: 'booster pressure', speed: scene.speed, at: booster.node },
      }),
    ),
  ];
}

/** The room's pressure against outdoors, where there is a house around it. */
function roomInput({ solved, speed }: Scene): DerivationInput[] {
  if (!solved.house) return [];
  return [
    {
      symbol: 'p_room',
      name: say.room,
      value: solved.house.pressure,
      unit: 'Pa',
      kind: 'pressure',
      ref: { figure: 'house pressure', speed },
    },
  ];
}

function roundNotes({ solved: { rounds } }: Scene): string[] {
  if (rounds.count === 1) return [];
  return [say.rounds(rounds.count, rounds.change.toExponential(1))];
}

/** Every friction and every loss of a fitting on the path, the largest first, each with its own derivation. */
function lossesOnPath({ solved, speed, places }: Scene): DerivationInput[] {
  const on = new Set(solved.path);
  const loss = { unit: 'Pa', kind: 'pressure' } as const;
  return [
    ...solved.path.flatMap((id): DerivationInput[] => {
      const leg = solved.segments.get(id);
      const ref = { figure: 'friction loss', speed, at: id } as const;
      const name = say.frictionIn(places.leg(id));
      return leg ? [{ ...loss, symbol: 'Δp_f', name, value: leg.frictionLoss, ref }] : [];
    }),
    ...solved.fittings
      .filter((fitting) => on.has(fitting.segment))
      .map(({ id, label, loss: value }) => ({
        ...loss,
        symbol: 'Δp',
        name: label,
        value,
        ref: { figure: 'fitting loss', speed, at: id } as const,
      })),
  ].sort((a, b) => b.value - a.value);
}

/** The total pressure of the hood's fan as an input of another figure. */
function totalPressureInput(scene: Scene): DerivationInput {
  return {
    symbol: 'p_t',
    name: say.hoodFan,
    value: scene.solved.totalPressure,
    unit: 'Pa',
    kind: 'pressure',
    ref: { figure: 'total pressure', speed: scene.speed },
  };
}

function flowInput(scene: Scene): DerivationInput {
  return {
    symbol: 'Q',
    name: say.flow,
    value: scene.solved.flow,
    unit: 'm³/s',
    kind: 'flow',
    ref: { figure: 'flow', speed: scene.speed },
  };
}
