import type { SchemeSolution } from '../../graph/solution.ts';
import { formatPressure, formatRun, type System } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { formatMoney } from '../cost/price.ts';
import type { Effects } from './effects.ts';

const says = words.proposals.effects;

/** What a change does beside the air, a few words each. */
export function effectWords(effects: Effects, units: System): readonly string[] {
  const { sound, house, cost, opening } = effects;
  const words: string[] = [];
  if (sound) words.push(says.sound(signed(sound.after - sound.before, 0.5, (n) => n.toFixed(0))));
  if (house) {
    const change = house.after - house.before;
    words.push(says.house(signed(change, 0.05, (n) => formatPressure(n, 'metric'))));
  }
  words.push(says.parts(formatMoney(cost, true)));
  words.push(opening < 0.05 ? says.nothingToOpen : says.toOpen(formatRun(opening, units)));
  return words;
}

/** Whether it fits its room, in words. */
export function fitWords({ fits, brings }: Effects): string | null {
  if (fits) return null;
  return brings.find(({ rule }) => rule.startsWith('fit-'))?.message ?? says.doesNotFit;
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
  return [says.houseDanger(formatPressure(-house.after, 'metric'))];
}

/** What it brings that was not there, gravest first; what does not fit is told by itself. */
export function bringsWords({ brings }: Effects): readonly string[] {
  return brings
    .filter(({ rule, severity }) => !rule.startsWith('fit-') && severity !== 'note')
    .map(({ message }) => message);
}

/** Rules told in a word where a change settles them. */
const settled: Readonly<Record<string, string>> = {
  'house-depressurization': says.settles.house,
  condensation: says.settles.condensation,
  'flexible-duct': says.settles.flexible,
  'smaller-than-collar': says.settles.collar,
  'velocity-high': says.settles.velocity,
};

export function settlesWords({ settles }: Effects): readonly string[] {
  return [...new Set(settles.flatMap(({ rule }) => settled[rule] ?? []))];
}

function signed(amount: number, least: number, format: (amount: number) => string): string {
  if (Math.abs(amount) < least) return `±${format(0)}`;
  return `${amount < 0 ? '−' : '+'}${format(Math.abs(amount))}`;
}
