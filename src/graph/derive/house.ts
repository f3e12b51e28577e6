import { leakage, OPENING_C } from '../../hydraulics/house.ts';
import { words } from '../../words/index.ts';
import type { Job } from '../document.ts';
import { houseOf } from '../house.ts';
import type { HouseResult } from '../solution.ts';
import { densityInput } from './air.ts';
import { type Derivation, type DerivationInput, type Figure, formulaSource } from './derivation.ts';
import type { Scene } from './scene.ts';

const say = words.derivation.house;

const blowerDoor = formulaSource('house-leakage', say.leakSource, 'memory');
const orifice = formulaSource('make-up-opening', say.openingSource);

/** How each figure of the house comes about; undefined where the job has none. */
export const houseFigures = {
  'house pressure': (scene) => {
    const both = houseIn(scene);
    if (!both) return undefined;
    const { house, result } = both;
    const makeUp = house.makeUpAir?.kind === 'opening' ? say.throughOpening : say.makeUpAir;
    return {
      ref: { figure: 'house pressure', speed: scene.speed },
      title: say.pressure(scene.result.name),
      symbol: 'p_room',
      value: result.pressure,
      unit: 'Pa',
      kind: 'pressure',
      formula: `p_room = ${drawnDown(result) ? '−(Q_leak / K)^(1/n)' : '(−Q_leak / K)^(1/n)'}, Q_leak = Q_hoods + Q_other − Q_makeup`,
      inputs: [
        {
          symbol: 'Q_leak',
          name: say.leaks,
          value: result.leakage,
          unit: 'm³/s',
          kind: 'flow',
          ref: { figure: 'house leakage', speed: scene.speed },
        },
        ...coefficientInputs(house),
        {
          symbol: 'Q_makeup',
          name: makeUp,
          value: result.makeUp,
          unit: 'm³/s',
          kind: 'flow',
        },
        { symbol: 'Q_hoods', name: say.hoods, value: result.hoods, unit: 'm³/s', kind: 'flow' },
        {
          symbol: 'Q_other',
          name: say.others,
          value: result.otherExhaust,
          unit: 'm³/s',
          kind: 'flow',
        },
      ],
      sources: [blowerDoor],
      notes: [
        say.notes,
        ...(result.limit
          ? [
              say.limit(
                result.limit.value,
                result.limit.appliance,
                result.limit.source,
                result.limit.sourceKind,
              ),
            ]
          : []),
      ],
    };
  },
  'house leakage': (scene) => {
    const both = houseIn(scene);
    if (!both) return undefined;
    const { house, result } = both;
    return {
      ref: { figure: 'house leakage', speed: scene.speed },
      title: say.leakage(scene.result.name),
      symbol: 'Q_leak',
      value: result.leakage,
      unit: 'm³/s',
      kind: 'flow',
      formula: `Q_leak = ${drawnDown(result) ? 'K (−p_room)^n' : '−K p_room^n'}, K = ACH50 · V / 3600 / 50^n`,
      inputs: [
        {
          symbol: 'p_room',
          name: say.room,
          value: result.pressure,
          unit: 'Pa',
          kind: 'pressure',
          ref: { figure: 'house pressure', speed: scene.speed },
        },
        ...coefficientInputs(house),
        { symbol: 'ACH50', name: say.airChanges, value: house.ach50, unit: '1/h' },
        { symbol: 'V', name: say.volume, value: house.volume, unit: 'm³', kind: 'volume' },
      ],
      sources: [blowerDoor],
      notes: [],
    };
  },
  'make-up air': (scene) => {
    const both = houseIn(scene);
    const needed = both?.result.makeUpNeeded;
    const limit = both?.result.limit;
    if (!both || !needed || !limit) return undefined;
    return {
      ref: { figure: 'make-up air', speed: scene.speed },
      title: say.makeUp(scene.result.name),
      symbol: 'Q_needed',
      value: needed.flow,
      unit: 'm³/s',
      kind: 'flow',
      formula: 'Q_needed = Q_hoods,limit + Q_other − K p_limit^n, A = Q_needed / √(2 p_limit / (C ρ))',
      inputs: [
        {
          symbol: 'Q_hoods,limit',
          name: say.hoodsAtLimit,
          value: needed.hoods,
          unit: 'm³/s',
          kind: 'flow',
        },
        { symbol: 'p_limit', name: say.below, value: limit.value, unit: 'Pa', kind: 'pressure' },
        {
          symbol: 'Q_other',
          name: say.others,
          value: both.result.otherExhaust,
          unit: 'm³/s',
          kind: 'flow',
        },
        ...coefficientInputs(both.house),
        {
          symbol: 'A',
          name: say.opening,
          value: needed.opening,
          unit: 'm²',
          kind: 'area',
        },
        { symbol: 'C', name: say.openingC, value: OPENING_C, unit: '' },
        densityInput(scene),
      ],
      sources: [
        blowerDoor,
        orifice,
        { row: limit.row, source: limit.source, sourceKind: limit.sourceKind, notes: [] },
      ],
      notes: [say.ownSolve, say.inAll],
    };
  },
} as const satisfies Partial<Record<Figure, (scene: Scene) => Derivation | undefined>>;

/** True where air comes in through the leaks; a make-up fan can turn that round. */
function drawnDown({ leakage: through }: HouseResult): boolean {
  return through >= 0;
}

function houseIn({
  job,
  solved,
}: Scene): { readonly house: NonNullable<Job['house']>; readonly result: HouseResult } | undefined {
  return job.house && solved.house ? { house: job.house, result: solved.house } : undefined;
}

function coefficientInputs(house: NonNullable<Job['house']>): DerivationInput[] {
  const { coefficient, exponent } = leakage(houseOf(house));
  return [
    { symbol: 'K', name: say.coefficient, value: coefficient, unit: 'm³/(s·Paⁿ)' },
    { symbol: 'n', name: say.exponent, value: exponent, unit: '' },
  ];
}
