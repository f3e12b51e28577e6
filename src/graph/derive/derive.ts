import { words } from '../../words/index.ts';
import type { Job } from '../document.ts';
import type { SchemeSolution } from '../solution.ts';
import { density, viscosity } from './air.ts';
import type { Derivation, FigureRef } from './derivation.ts';
import { boosterPressure } from './fan.ts';
import { fittingFigures } from './fitting.ts';
import { dewPointFigure, heatFigures } from './heat.ts';
import { givenInputs, hoodFigures } from './hood.ts';
import { houseFigures } from './house.ts';
import { legFigures } from './leg.ts';
import { type Scene, sceneOf } from './scene.ts';
import { soundFigures, soundSourceFigures } from './sound.ts';

const say = words.derivation.share;

/**
 * How a figure came about: formula, inputs (each with a reference to its own derivation where it has
 * one) and sources. `undefined` where that speed has no numbers or the place is not there.
 *
 * @param ref `at` is a segment id for a leg's figures, a fitting's id for a fitting's, a cause for a sound's
 */
export function derive(job: Job, solution: SchemeSolution, ref: FigureRef): Derivation | undefined {
  const scene = sceneOf(job, solution, ref.speed);
  return scene && derived(scene, ref);
}

function derived(scene: Scene, { figure, at }: FigureRef): Derivation | undefined {
  if (figure === 'density') return density(scene);
  if (figure === 'viscosity') return viscosity(scene);
  if (figure === 'share of pressure') return share(scene, at);
  if (figure in hoodFigures && at === undefined)
    return hoodFigures[figure as keyof typeof hoodFigures](scene);
  if (figure in houseFigures) return houseFigures[figure as keyof typeof houseFigures](scene);
  if (figure in soundFigures) return soundFigures[figure as keyof typeof soundFigures](scene, at);
  if (figure in soundSourceFigures)
    return soundSourceFigures[figure as keyof typeof soundSourceFigures](scene, at);
  if (figure === 'booster pressure') return boosterPressure(scene, at);
  if (figure === 'dew point') return dewPointFigure(scene);
  if (at === undefined) return undefined;
  const leg = scene.leg(at);
  if (leg && figure in heatFigures) return heatFigures[figure as keyof typeof heatFigures](scene, leg);
  if (leg && figure in legFigures) return legFigures[figure as keyof typeof legFigures](scene, leg);
  const fitting = scene.fitting(at);
  if (fitting && figure in fittingFigures)
    return fittingFigures[figure as keyof typeof fittingFigures](scene, fitting);
  return undefined;
}

/** Every figure of a solved speed, hood first, then leg by leg and fitting by fitting in flow order. */
export function figuresOf(solution: SchemeSolution, speed: number): FigureRef[] {
  const outcome = solution.speeds[speed]?.outcome;
  if (!outcome?.solved) return [];
  const over = (figures: object, at?: string) =>
    Object.keys(figures).map(
      (figure) => ({ figure, speed, ...(at === undefined ? {} : { at }) }) as FigureRef,
    );
  return [
    ...over({ ...hoodFigures, density, viscosity }),
    ...outcome.boosters.flatMap(({ node }) => over({ 'booster pressure': boosterPressure }, node)),
    ...(outcome.house ? over(houseFigures) : []).filter(
      ({ figure }) => figure !== 'make-up air' || outcome.house?.makeUpNeeded,
    ),
    ...over(soundFigures),
    ...[...outcome.sound.cook.byCause.keys()].flatMap((cause) => over(soundFigures, cause)),
    ...outcome.sound.sources.flatMap(({ at }) => over(soundSourceFigures, at)),
    ...over({ 'dew point': dewPointFigure }),
    ...[...outcome.segments.keys()].flatMap((id) =>
      over({ ...legFigures, ...heatFigures, 'share of pressure': share }, id),
    ),
    ...outcome.fittings.flatMap(({ id }) => over({ ...fittingFigures, 'share of pressure': share }, id)),
  ];
}

/** The derivation of every figure of one speed; none for a speed without numbers. */
export function explained(job: Job, solution: SchemeSolution, speed: number): Derivation[] {
  const scene = sceneOf(job, solution, speed);
  return scene ? figuresOf(solution, speed).flatMap((ref) => derived(scene, ref) ?? []) : [];
}

function share(scene: Scene, at: string | undefined): Derivation | undefined {
  if (at === undefined) return undefined;
  const leg = scene.leg(at);
  const fitting = scene.fitting(at);
  const value = leg?.result.share ?? fitting?.result.share;
  if (value === undefined) return undefined;
  const loss = leg?.result.frictionLoss ?? fitting?.result.loss ?? 0;
  return {
    ref: { figure: 'share of pressure', speed: scene.speed, at },
    title: say.title(leg ? scene.places.leg(at) : (fitting?.result.label ?? at)),
    symbol: 's',
    value,
    unit: '',
    formula: `s = Δp / ${ofFans(scene)}`,
    inputs: [
      {
        symbol: 'Δp',
        name: leg ? say.leg : say.fitting,
        value: loss,
        unit: 'Pa',
        kind: 'pressure',
        ref: { figure: leg ? 'friction loss' : 'fitting loss', speed: scene.speed, at },
      },
      ...givenInputs(scene),
    ],
    sources: [],
    notes: value === 0 && loss !== 0 ? [words.derivation.share.nothing] : [],
  };
}

/** The pressure of every fan on the path, as it stands in a formula. */
function ofFans({ solved }: Scene): string {
  const fans = solved.boosters.map((_, i) => ` + p_b${i + 1}`).join('');
  return fans === '' ? 'p_t' : `(p_t${fans})`;
}
