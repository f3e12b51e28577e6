import { formatMoney } from '../../advice/cost/price.ts';
import type { Effects } from '../../advice/proposals/effects.ts';
import type { SchemeSolution } from '../../graph/solution.ts';
import { formatPressure, formatRun, type System } from '../../units/index.ts';

/** What a change does beside the air, a few words each. */
export function effectWords(effects: Effects, units: System): readonly string[] {
  const { sound, house, cost, opening } = effects;
  const words: string[] = [];
  if (sound) words.push(`${signed(sound.after - sound.before, 0.5, (n) => n.toFixed(0))} dB at the cook`);
  if (house) {
    const change = house.after - house.before;
    words.push(`house ${signed(change, 0.05, (n) => formatPressure(n, 'metric'))}`);
  }
  words.push(`parts ${formatMoney(cost, true)}`);
  words.push(opening < 0.05 ? 'nothing to open up' : `${formatRun(opening, units)} to open up`);
  return words;
}

/** Whether it fits its room, in words. */
export function fitWords({ fits, brings }: Effects): string | null {
  if (fits) return null;
  return brings.find(({ rule }) => rule.startsWith('fit-'))?.message ?? 'It does not fit its room.';
}

/** A danger that was there already and that more air makes worse: said where the change is made. */
export function houseWords({
  house,
  settles,
  brings,
  solution,
}: Effects & { readonly solution: SchemeSolution }): readonly string[] {
  const grave = solution.findings.find(({ rule }) => rule === 'house-depressurization');
  if (!house || !grave || house.after > house.before - 0.05) return [];
  if ([...settles, ...brings].some(({ rule }) => rule === grave.rule)) return [];
  return [
    `The house then stands ${formatPressure(-house.after, 'metric')} below outdoors, beyond its limit: bring in make-up air, and have every flue tested for spillage.`,
  ];
}

/** What it brings that was not there, gravest first; what does not fit is told by itself. */
export function bringsWords({ brings }: Effects): readonly string[] {
  return brings
    .filter(({ rule, severity }) => !rule.startsWith('fit-') && severity !== 'note')
    .map(({ message }) => message);
}

/** Rules told in a word where a change settles them. */
const settled: Readonly<Record<string, string>> = {
  'house-depressurization': 'house within its limit',
  condensation: 'no condensation',
  'flexible-duct': 'no flexible duct',
  'smaller-than-collar': 'full size from the collar',
  'velocity-high': 'velocity within the band',
};

export function settlesWords({ settles }: Effects): readonly string[] {
  return [...new Set(settles.flatMap(({ rule }) => settled[rule] ?? []))];
}

function signed(amount: number, least: number, format: (amount: number) => string): string {
  if (Math.abs(amount) < least) return `±${format(0)}`;
  return `${amount < 0 ? '−' : '+'}${format(Math.abs(amount))}`;
}
