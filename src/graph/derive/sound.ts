import { A_WEIGHTING, aWeighted, OCTAVES } from '../../hydraulics/decibel.ts';
import {
  FAN_OCTAVES,
  NARROW_DUCT,
  OUTDOOR_EFFECT,
  ROOM_EFFECT,
  type SoundCause,
  WIDE_DUCT,
} from '../../hydraulics/sound.ts';
import { formatNumber, formatTrimmed } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import type { SoundAt, SoundSourceResult } from '../solution.ts';
import type { Derivation, DerivationInput, Figure, FigureRef } from './derivation.ts';
import type { Scene } from './scene.ts';

const say = words.derivation.sound;

/** The sums, and the sources that they are made of, at both places. */
type Sum = 'sound at the cook' | 'sound outside';
type Single = 'source at the cook' | 'source outside';

/** How the sound at both places comes about: the whole, or one cause of it. */
export const soundFigures = {
  'sound at the cook': (scene, cause) => sumOf(scene, 'sound at the cook', scene.solved.sound.cook, cause),
  'sound outside': (scene, cause) => sumOf(scene, 'sound outside', scene.solved.sound.outside, cause),
} as const satisfies Partial<Record<Figure, (scene: Scene, cause?: string) => Derivation | undefined>>;

/** How what one source gives at both places comes about; undefined for a source that is not there. */
export const soundSourceFigures = {
  'source at the cook': (scene, at) => single(scene, 'source at the cook', at),
  'source outside': (scene, at) => single(scene, 'source outside', at),
} as const satisfies Partial<Record<Figure, (scene: Scene, at?: string) => Derivation | undefined>>;

function sumOf(scene: Scene, figure: Sum, at: SoundAt, cause: string | undefined): Derivation | undefined {
  const { assumptions, uncertainty, provenance, sources } = scene.solved.sound;
  const outside = figure === 'sound outside';
  const place = words.derivation.figures[figure];
  const level = cause === undefined ? at.level : at.byCause.get(cause as SoundCause);
  if (level === undefined) return undefined;
  const { speed } = scene;
  const parts =
    cause === undefined
      ? [...at.byCause].map(([source, value]) => ({
          name: words.causes.sound[source],
          value,
          ref: { figure, speed, at: source } satisfies FigureRef,
        }))
      : sources
          .filter((source) => source.cause === cause)
          .map((source) => ({
            name: sourceName(scene, source),
            value: outside ? source.outside : source.cook,
            ref: {
              figure: outside ? 'source outside' : 'source at the cook',
              speed,
              at: source.at,
            } satisfies FigureRef,
          }));
  return {
    ref: { figure, speed, ...(cause === undefined ? {} : { at: cause }) },
    title:
      cause === undefined
        ? say.heard(place, scene.result.name)
        : say.source(place, words.causes.sound[cause as SoundCause], scene.result.name),
    symbol: 'L',
    value: level,
    unit: 'dBA',
    formula: 'L = 10 log10 Σ 10^(L_i / 10)',
    inputs: parts.map((part, i) => ({ ...part, symbol: `L_${i + 1}`, unit: 'dBA' })),
    sources: [provenance],
    notes: [
      ...(cause === undefined ? [say.sones(formatNumber(at.sones, at.sones < 9.95 ? 1 : 0))] : []),
      say.estimate(uncertainty),
      ...assumptions,
    ],
  };
}

function single(scene: Scene, figure: Single, at: string | undefined): Derivation | undefined {
  const { sources, provenance } = scene.solved.sound;
  const source = sources.find((one) => one.at === at);
  if (!source) return undefined;
  const outside = figure === 'source outside';
  const way = outside ? source.toOutside : source.toCook;
  const along = way ? ' − a_f x − b_f n − e_f' : '';
  const endOf = way ? ', e_f = 10 log10(1 + (0.7 · 343 / (π f d))²)' : '';
  const told = powerOf(scene, source, outside);
  const wayInputs: DerivationInput[] = way
    ? [
        { symbol: 'x', name: say.way, value: way.length, unit: 'm', kind: 'run' },
        { symbol: 'n', name: say.bends, value: way.bends, unit: '' },
        { symbol: 'd', name: say.opening, value: way.opening, unit: 'm', kind: 'run' },
      ]
    : [];
  return {
    ref: { figure, speed: scene.speed, at: source.at },
    title: say.source(words.derivation.figures[figure], sourceName(scene, source), scene.result.name),
    symbol: 'L',
    value: outside ? source.outside : source.cook,
    unit: 'dBA',
    formula:
      told.whole ??
      `L = 10 log10 Σ_f 10^(L_f / 10), L_f = ${told.octave} + A_f${along} + ${outside ? 'R_out' : 'R_cook'}${told.where}${endOf}`,
    inputs: told.whole ? told.inputs : [...told.inputs, ...wayInputs],
    sources: [provenance],
    notes: told.whole?.includes('L_rated') ? [] : octaveNotes(),
  };
}

interface Power {
  /** The level without any octaves, where none are needed. */
  readonly whole?: string;
  readonly octave: string;
  readonly where: string;
  readonly inputs: readonly DerivationInput[];
}

/** The sound power of a source, by the octave, in symbols. */
function powerOf(scene: Scene, { at, flow, cook }: SoundSourceResult, outside: boolean): Power {
  if (flow) {
    const { velocity, area, c } = flow;
    return {
      octave: 'L_W + o_f',
      where: `, o_f = −2 − 26 log10(1.14 + 0.02 f/V), L_W = 10 + ${c === null ? '50' : '60'} log10 V${c === null ? '' : ' + 30 log10 C'} + 10 log10 A`,
      inputs: [
        { symbol: 'V', name: say.velocity, value: velocity, unit: 'm/s', kind: 'velocity' },
        ...(c === null ? [] : [{ symbol: 'C', name: say.coefficient, value: c, unit: '' }]),
        { symbol: 'A', name: say.area, value: area, unit: 'm²', kind: 'area' },
      ],
    };
  }
  const booster = scene.solved.boosters.find(({ node }) => node === at);
  if (booster)
    return {
      octave: '40 + 10 log10 Q + 20 log10 p + s_f',
      where: '',
      inputs: fanPoint(booster.flow, booster.pressure),
    };
  const { fan } = scene.solved.sound;
  if (outside) {
    const ref: FigureRef = { figure: 'source at the cook', speed: scene.speed, at };
    return {
      octave: 'L_cook − R_cook − L_s + s_f',
      where: '',
      inputs: [{ symbol: 'L_cook', name: say.atCook, value: cook, unit: 'dBA', ref }],
    };
  }
  const point = fanPoint(fan.flow, fan.pressure);
  if (!fan.rated)
    return { whole: 'L = 40 + 10 log10 Q + 20 log10 p + L_s + R_cook', octave: '', where: '', inputs: point };
  return {
    whole: 'L = L_rated + 10 log10(Q/Q_r) + 20 log10(p/p_r)',
    octave: '',
    where: '',
    inputs: [
      { symbol: 'L_rated', name: say.ratedSound, value: fan.rated.level, unit: 'dBA' },
      ...point,
      { symbol: 'Q_r', name: say.ratedFlow, value: fan.rated.flow, unit: 'm³/s', kind: 'flow' },
      {
        symbol: 'p_r',
        name: say.ratedPressure,
        value: fan.rated.pressure,
        unit: 'Pa',
        kind: 'pressure',
      },
    ],
  };
}

function fanPoint(flow: number, pressure: number): DerivationInput[] {
  return [
    { symbol: 'Q', name: say.soundFlow, value: flow, unit: 'm³/s', kind: 'flow' },
    { symbol: 'p', name: say.ratedPressure, value: pressure, unit: 'Pa', kind: 'pressure' },
  ];
}

/** "the leg from the hood to turn 1", "90° bend", "the hood's own fan". */
function sourceName({ solved, places }: Scene, { at }: SoundSourceResult): string {
  if (solved.segments.has(at)) return places.leg(at);
  const fitting = solved.fittings.find(({ id }) => id === at);
  if (fitting) return fitting.label;
  const booster = solved.boosters.find(({ node }) => node === at);
  return booster ? say.fanInRun(booster.name) : say.hoodFan;
}

/** The constants by octave. */
function octaveNotes(): string[] {
  const list = (values: readonly number[]) => values.map((value) => formatTrimmed(value, 2)).join('; ');
  return [
    say.octaves(OCTAVES.join(', ')),
    say.weighting(list(A_WEIGHTING)),
    say.narrow(list(NARROW_DUCT)),
    say.wide(list(WIDE_DUCT)),
    say.bendLoss,
    say.fanShape(list(FAN_OCTAVES), formatNumber(aWeighted(FAN_OCTAVES), 6)),
    say.places(formatNumber(ROOM_EFFECT, 6), formatNumber(OUTDOOR_EFFECT, 6)),
    say.least,
  ];
}
