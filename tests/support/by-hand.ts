import { readPrinted, work } from './formula.ts';

/** Inputs as printed, by symbol; a symbol that stands more than once has several. */
export type Given = readonly (readonly [symbol: string, value: number])[];

/**
 * The result of a formula of the appendix from its printed inputs alone. What is written in symbols is worked
 * as it stands; what is said in words is done here by its own means.
 *
 * @param notes the notes of the appendix, which print the constants of the octaves
 */
export function workByHand(formula: string, given: Given, notes: readonly string[]): number {
  const one = new Map(given);
  const get = (symbol: string) => {
    const value = one.get(symbol);
    if (value === undefined) throw new Error(`no ${symbol} for "${formula}"`);
    return value;
  };
  const sum = (symbol: string) =>
    given.reduce((total, [name, value]) => total + (name === symbol ? value : 0), 0);
  if (formula.startsWith('the largest of')) return Math.max(...one.values());
  if (formula.startsWith('turbulent')) return frictionFactor(get('Re'), get('ε') / get('D'));
  if (formula.startsWith('Q is the flow at which')) {
    const left = formula.replace('Q is the flow at which ', '').split(' = ')[0] ?? '';
    const driving = left.split(' + ').reduce((total, symbol) => total + get(symbol), 0);
    return driving - (sum('Δp_f') + sum('Δp'));
  }
  if (formula === 'L = 10 log10 Σ 10^(L_i / 10)') return levelOf([...one.values()]);
  if (formula.startsWith('L = 10 log10 Σ_f')) return byOctaves(formula, one, notes);
  if (formula.startsWith('L = 40'))
    return work(formula, new Map([...one, ['L_s', shapeOf(notes).level], ['R_cook', effects(notes).cook]]));
  if (formula.startsWith('T_w =')) {
    if (get('x') === 0) return get('T_0');
    return Math.min(get('T_0'), work('T_w = T − (U / 20) (T − T_a)', one));
  }
  if (formula.startsWith('s = Δp / ')) return get('p_t') > 0 ? work(formula, one) : 0;
  if (formula.startsWith('C = s (1') || formula.startsWith('C = w')) return joined(formula, get);
  return work(formula, one);
}

function levelOf(levels: readonly number[]): number {
  return 10 * Math.log10(levels.reduce((total, level) => total + 10 ** (level / 10), 0));
}

/** Colebrook by plain iteration; laminar; between them the cubic of f Re² that meets both in value and slope. */
function frictionFactor(re: number, rough: number): number {
  const turbulent = (at: number): number => {
    let x = 8;
    for (let i = 0; i < 100; i++) x = -2 * Math.log10(rough / 3.7 + (2.51 * x) / at);
    return 1 / x ** 2;
  };
  if (re >= 4000) return turbulent(re);
  if (re <= 2000) return 64 / re;
  const group = (at: number) => turbulent(at) * at ** 2;
  const step = 0.01;
  const [y0, y1] = [64 * 2000, group(4000)];
  const [m0, m1] = [64 * 2000, ((group(4000 + step) - group(4000 - step)) / (2 * step)) * 2000];
  const t = (re - 2000) / 2000;
  const hermite =
    (2 * t ** 3 - 3 * t ** 2 + 1) * y0 +
    (t ** 3 - 2 * t ** 2 + t) * m0 +
    (3 * t ** 2 - 2 * t ** 3) * y1 +
    (t ** 3 - t ** 2) * m1;
  return hermite / re ** 2;
}

/** Idelchik's tees and wyes as their formulas are printed, with what the notes say of their ranges. */
function joined(formula: string, get: (symbol: string) => number): number {
  const q = get('q');
  const a = Math.min(1, Math.max(0.1, get('a')));
  const angle = Math.min(90, Math.max(15, get('α')));
  const cos = angle === 90 ? 0 : Math.cos((angle * Math.PI) / 180);
  if (formula.startsWith('C = w')) {
    const w = 1 - (1 - q) ** 2 - (2 * q ** 2 * cos) / a;
    return w + Math.max(0, (angle - 60) / 30) * (1.55 * q - q ** 2 - w);
  }
  const joining = formula.includes('0.55');
  const c = joining
    ? (a <= 0.35 ? 1 : Math.max(0.9 * (1 - q), 0.55)) *
      (1 + (q / a) ** 2 - 2 * (1 - q) ** 2 - (2 * q ** 2 * cos) / a)
    : (1 - 0.1 * Math.min(1, Math.max(0, (q / a - 0.8) / 0.2))) * (1 + (q / a) ** 2 - 2 * (q / a) * cos);
  const atRest = joining ? -1 : 1;
  return atRest + Math.min(1, q / 0.02) * (c - atRest);
}

const numbersIn = (text: string) => (text.match(/[-−]?\d+(?:\.\d+)?/g) ?? []).map(readPrinted);

function noteStarting(notes: readonly string[], start: string): string {
  const note = notes.find((one) => one.startsWith(start));
  if (!note) throw new Error(`no note "${start}"`);
  return note.slice(start.length);
}

function shapeOf(notes: readonly string[]) {
  const [shape = '', level = ''] = noteStarting(notes, 'Octaves of the fan s_f:').split('L_s =');
  return { shape: numbersIn(shape), level: readPrinted(level.trim().replace(' dBA.', '')) };
}

function effects(notes: readonly string[]) {
  const [cook = 0, outside = 0] = numbersIn(noteStarting(notes, 'From sound power to what is heard:'));
  return { cook, outside };
}

function byOctaves(formula: string, given: ReadonlyMap<string, number>, notes: readonly string[]): number {
  const octaves = numbersIn(noteStarting(notes, 'Octaves f:'));
  const weighting = numbersIn(noteStarting(notes, 'A-weighting A_f:'));
  const narrow = numbersIn(noteStarting(notes, 'Bare duct up to 0.18 m across, a_f:')).slice(0, 8);
  const wide = numbersIn(noteStarting(notes, 'Wider duct, a_f:')).slice(0, 8);
  const { shape, level } = shapeOf(notes);
  const { cook, outside } = effects(notes);
  const octave = formula.slice(formula.indexOf(', ') + 2);
  const d = Math.max(given.get('d') ?? 1, 0.05);
  return levelOf(
    octaves.map((f, i) => {
      const reach = f * d;
      const bend = reach < 48.3 ? 0 : reach < 96.5 ? 1 : reach < 190.5 ? 2 : 3;
      const known = new Map([
        ...given,
        ['d', d],
        ['f', f],
        ['A_f', weighting[i] ?? 0],
        ['a_f', (d <= 0.18 ? narrow : wide)[i] ?? 0],
        ['b_f', bend],
        ['s_f', shape[i] ?? 0],
        ['L_s', level],
        ['R_cook', cook],
        ['R_out', outside],
        ...(given.has('p') ? [['p', Math.max(given.get('p') ?? 0, 0.001)] as const] : []),
        ...(given.has('C') ? [['C', Math.max(Math.abs(given.get('C') ?? 0), 0.001)] as const] : []),
      ]);
      return work(octave, known);
    }),
  );
}
