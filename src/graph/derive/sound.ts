import type { SoundCause } from '../../hydraulics/sound.ts';
import type { SoundAt } from '../solution.ts';
import type { Derivation, Figure, FigureRef } from './derivation.ts';
import type { Scene } from './scene.ts';

/** How each level is made, by what causes it. Powers are dB re 1 pW; each is taken along the run by octaves. */
const formulas: Readonly<Record<SoundCause, string>> = {
  fan: 'L = L_rated + 10 log10(Q/Q_r) + 20 log10(p/p_r), or L_W = 40 + 10 log10 Q + 20 log10 p where no sound is rated',
  'straight duct': 'L_W = 10 + 50 log10 V + 10 log10 A for each leg, added on energy',
  bend: 'L_W = 10 + 60 log10 V + 30 log10 C + 10 log10 A for each bend, added on energy',
  damper: 'L_W = 10 + 60 log10 V + 30 log10 C + 10 log10 A for each damper, added on energy',
  cap: 'L_W = 10 + 60 log10 V + 30 log10 C + 10 log10 A, V, C and A in the opening of the cap',
  transition: 'L_W = 10 + 60 log10 V + 30 log10 C + 10 log10 A for each change of size, added on energy',
  'other fitting': 'L_W = 10 + 60 log10 V + 30 log10 C + 10 log10 A for each, added on energy',
};

/** How the sound at both places comes about: the whole, or one cause of it. */
export const soundFigures = {
  'sound at the cook': (scene, cause) =>
    derivation(scene, 'sound at the cook', scene.solved.sound.cook, cause),
  'sound outside': (scene, cause) => derivation(scene, 'sound outside', scene.solved.sound.outside, cause),
} as const satisfies Partial<Record<Figure, (scene: Scene, cause?: string) => Derivation | undefined>>;

function derivation(
  scene: Scene,
  figure: 'sound at the cook' | 'sound outside',
  at: SoundAt,
  cause: string | undefined,
): Derivation | undefined {
  const { assumptions, uncertainty, provenance } = scene.solved.sound;
  const place = figure === 'sound outside' ? 'Sound outside beneath the cap' : "Sound at the cook's head";
  const base = {
    unit: 'dBA',
    sources: [provenance],
    notes: [`An estimate to rank routes by: ±${uncertainty} dB.`, ...assumptions],
  };
  if (cause === undefined) {
    return {
      ...base,
      ref: { figure, speed: scene.speed },
      title: `${place}, ${scene.result.name}`,
      symbol: 'L',
      value: at.level,
      formula: 'L = 10 log10 Σ 10^(L_i / 10)',
      inputs: [...at.byCause].map(([name, level], i) => ({
        symbol: `L_${i + 1}`,
        name,
        value: level,
        unit: 'dBA',
        ref: { figure, speed: scene.speed, at: name } satisfies FigureRef,
      })),
      notes: [`${at.sones.toPrecision(2)} sone.`, ...base.notes],
    };
  }
  const level = at.byCause.get(cause as SoundCause);
  if (level === undefined) return undefined;
  const { flow, totalPressure } = scene.solved;
  const speed = scene.speed;
  return {
    ...base,
    ref: { figure, speed, at: cause },
    title: `${place} by ${cause}, ${scene.result.name}`,
    symbol: 'L',
    value: level,
    formula: `${formulas[cause as SoundCause]}; less attenuation of duct and bends and the reflection at the open end, with the effect of the place, A-weighted over octaves`,
    inputs: [
      {
        symbol: 'Q',
        name: 'air delivered',
        value: flow,
        unit: 'm³/s',
        kind: 'flow',
        ref: { figure: 'flow', speed },
      },
      {
        symbol: 'p',
        name: "total pressure of the hood's fan",
        value: totalPressure,
        unit: 'Pa',
        kind: 'pressure',
        ref: { figure: 'total pressure', speed },
      },
    ],
  };
}
