import type { SoundCause } from '../../hydraulics/sound.ts';
import { formatNumber } from '../../units/index.ts';
import type { SoundAt } from '../solution.ts';
import { soundCauses } from '../sound.ts';
import type { Derivation, DerivationInput, Figure, FigureRef } from './derivation.ts';
import type { Scene } from './scene.ts';

/** How each level is made, by what causes it. Powers are dB re 1 pW; each is taken along the run by octaves. */
const formulas: Readonly<Record<SoundCause, string>> = {
  fan: 'L = L_rated + 10 log10(Q/Q_r) + 20 log10(p/p_r), or L_W = 40 + 10 log10 Q + 20 log10 p where no sound is rated',
  'straight duct': 'L_W = 10 + 50 log10 V + 10 log10 A for each leg, added on energy',
  bend: 'L_W = 10 + 60 log10 V + 30 log10 C + 10 log10 A for each bend, added on energy',
  damper: 'L_W = 10 + 60 log10 V + 30 log10 C + 10 log10 A for each damper, added on energy',
  cap: 'L_W = 10 + 60 log10 V + 30 log10 C + 10 log10 A, V, C and A taken over to the opening of the cap',
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
      notes: [`${formatNumber(at.sones, at.sones < 9.95 ? 1 : 0)} sone.`, ...base.notes],
    };
  }
  const level = at.byCause.get(cause as SoundCause);
  if (level === undefined) return undefined;
  return {
    ...base,
    ref: { figure, speed: scene.speed, at: cause },
    title: `${place} by ${cause}, ${scene.result.name}`,
    symbol: 'L',
    value: level,
    formula: `${formulas[cause as SoundCause]}${cause === 'fan' && figure === 'sound at the cook' ? '' : '; less attenuation of duct and bends and the reflection at the open end, with the effect of the place, A-weighted over octaves'}`,
    inputs: cause === 'fan' ? fanInputs(scene) : sourceInputs(scene, cause as SoundCause),
  };
}

function fanInputs({ solved }: Scene): DerivationInput[] {
  const { rated, flow, pressure } = solved.sound.fan;
  const point: DerivationInput[] = [
    { symbol: 'Q', name: 'flow that its sound is taken at', value: flow, unit: 'm³/s', kind: 'flow' },
    { symbol: 'p', name: 'total pressure there', value: pressure, unit: 'Pa', kind: 'pressure' },
  ];
  if (!rated) return point;
  return [
    { symbol: 'L_rated', name: 'rated sound', value: rated.level, unit: 'dBA' },
    ...point,
    { symbol: 'Q_r', name: 'flow at the rated point', value: rated.flow, unit: 'm³/s', kind: 'flow' },
    { symbol: 'p_r', name: 'total pressure there', value: rated.pressure, unit: 'Pa', kind: 'pressure' },
  ];
}

/** Velocities of the legs, or of the fittings with their coefficients, that make the noise. */
function sourceInputs({ solved, speed, places }: Scene, cause: SoundCause): DerivationInput[] {
  const velocity = { unit: 'm/s', kind: 'velocity' } as const;
  if (cause === 'straight duct')
    return solved.path.map((id, i) => ({
      ...velocity,
      symbol: `V_${i + 1}`,
      name: places.leg(id),
      value: solved.segments.get(id)?.velocity ?? 0,
      ref: { figure: 'velocity', speed, at: id },
    }));
  return solved.fittings
    .filter(({ segment }) => solved.path.includes(segment))
    .filter(({ kind }) => (soundCauses[kind] ?? 'other fitting') === cause)
    .flatMap(({ id, label, velocity: value, c }, i): DerivationInput[] => [
      { ...velocity, symbol: `V_${i + 1}`, name: label, value },
      {
        symbol: `C_${i + 1}`,
        name: `coefficient of ${label}`,
        value: c,
        unit: '',
        ref: { figure: 'coefficient', speed, at: id },
      },
    ]);
}
