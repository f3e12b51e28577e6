import type { Derivation, DerivationInput, Figure } from '../../graph/derive/derivation.ts';
import {
  bends,
  caps,
  entries,
  inlineParts,
  junctions,
  limits,
  materials,
  transitions,
} from '../../hydraulics/catalogue.ts';
import type { Provenance, SourceKind } from '../../hydraulics/types.ts';
import { INCH, quantity, type System } from '../../units/index.ts';
import { percent } from '../wording.ts';

/** How far a source can be trusted, in plain words. */
export const sourceWords: Readonly<Record<SourceKind, string>> = {
  found: 'found in the source',
  memory: 'from memory',
  'common practice': 'common practice',
  assumption: 'assumption',
};

/** A value as people read it and, where that says something more, in SI. */
export interface ShownValue {
  readonly people: string;
  readonly si: string | null;
}

const superscripts: Readonly<Record<string, string>> = {
  '-': '⁻',
  ...Object.fromEntries([...'⁰¹²³⁴⁵⁶⁷⁸⁹'].map((sign, digit) => [String(digit), sign])),
};

/** Four significant digits: `0.2431`, `142300`, `1.820 × 10⁻⁵`; a dash for what is not a number. */
export function significant(value: number): string {
  if (!Number.isFinite(value)) return '–';
  const size = Math.abs(value);
  if (size !== 0 && (size < 1e-3 || size >= 1e7)) {
    const [mantissa = '', exponent = ''] = value.toExponential(3).split('e');
    const raised = [...exponent.replace('+', '')].map((sign) => superscripts[sign] ?? sign).join('');
    return `${mantissa.replace('-', '−')} × 10${raised}`;
  }
  const rounded = size >= 1000 ? String(Math.round(value)) : String(Number(value.toPrecision(4)));
  return rounded.replace('-', '−');
}

/** Below this a length is a diameter or the like, and told finer than a run of duct, m. */
const SHORT = 0.6;

function shortLength(metres: number, system: System): string {
  return system === 'imperial'
    ? `${Number((metres / INCH).toFixed(2))} in`
    : `${Number((1000 * metres).toFixed(1))} mm`;
}

const shares: readonly Figure[] = ['share of rated', 'share of pressure'];

/** The value of a derivation or of one of its inputs. */
export function shownValue(
  of: Pick<DerivationInput, 'value' | 'unit' | 'kind' | 'ref'>,
  system: System,
): ShownValue {
  if (of.unit === 'dBA') return { people: `${Math.round(of.value)} dBA`, si: null };
  const si = of.unit === '' ? significant(of.value) : `${significant(of.value)} ${of.unit}`;
  if (of.ref && shares.includes(of.ref.figure)) return { people: percent(of.value), si };
  if (!of.kind) return { people: si, si: null };
  if (of.kind === 'run' && Math.abs(of.value) < SHORT) return { people: shortLength(of.value, system), si };
  const { text, unit } = quantity(of.kind, of.value, system);
  return { people: text.replace(/^-/, '−'), si: unit === of.unit ? null : si };
}

/** A run of a formula's characters, and how it is set. */
export interface FormulaRun {
  readonly set: 'upright' | 'symbol' | 'sub' | 'sup';
  readonly text: string;
}

const pieces =
  /(\d)e(-?\d+)|\^(?:\(([^()]*)\)|([\d.]+|\p{L}))|(\p{L}+(?:['’]\p{Ll}+)?(?:_[\p{L}\d]+(?:,\p{L}+)?)?)(10)?/gu;

/**
 * A formula in runs: symbols slanted with what follows `_` lowered, powers raised, words and
 * functions upright. A lone letter is a symbol, except an `a` or `A` that is none of `symbols`.
 */
export function formulaRuns(formula: string, symbols: readonly string[] = []): FormulaRun[] {
  const known = new Set(symbols.flatMap((symbol) => symbol.match(/[\p{L}_]+/gu) ?? []));
  const runs: FormulaRun[] = [];
  const put = (set: FormulaRun['set'], text: string) => {
    const last = runs.at(-1);
    if (set === 'upright' && last?.set === 'upright') runs[runs.length - 1] = { set, text: last.text + text };
    else if (text !== '') runs.push({ set, text });
  };
  let from = 0;
  for (const match of formula.matchAll(pieces)) {
    const [whole, digit, exponent, group, single, word, ten] = match;
    const power = group?.replaceAll('_', '') ?? single;
    put('upright', formula.slice(from, match.index));
    from = match.index + whole.length;
    if (digit !== undefined && exponent !== undefined) {
      put('upright', `${digit} × 10`);
      put('sup', exponent.replace('-', '−'));
    } else if (power !== undefined) put('sup', power);
    else if (word !== undefined) putWord(word, known, put);
    if (ten !== undefined) put(word === 'log' ? 'sub' : 'upright', ten);
  }
  put('upright', formula.slice(from));
  return runs;
}

function putWord(
  word: string,
  known: ReadonlySet<string>,
  put: (set: FormulaRun['set'], text: string) => void,
): void {
  const [stem = '', below] = word.split('_');
  const lone = [...stem].length === 1 && !/^[aA]$/.test(stem);
  const symbol = below !== undefined || known.has(stem) || lone || /^Δ\p{L}$/u.test(stem);
  put(symbol ? 'symbol' : 'upright', stem);
  if (below !== undefined) put('sub', below);
}

const lists = { bends, materials, caps, inline: inlineParts, transitions, junctions, entries, limits };

/** The catalogue row behind a provenance, in trade words; undefined for a formula. */
export function catalogueRow(
  of: Provenance,
): { readonly name: string; readonly reference?: string; readonly range?: string } | undefined {
  const [list = '', id = ''] = of.row.split('/');
  if (!Object.hasOwn(lists, list)) return undefined;
  const rows: readonly { id: string; name: string; reference?: string; range?: string }[] =
    lists[list as keyof typeof lists];
  return rows.find((row) => row.id === id);
}

/** A sentence with its capital and its full stop. */
export function asSentence(text: string): string {
  const trimmed = text.trim();
  const ended = /[.!?]$/.test(trimmed) ? trimmed : `${trimmed}.`;
  return ended.charAt(0).toUpperCase() + ended.slice(1);
}

/** What was done to come to the value: the derivation's own notes and those of its sources, each once. */
export function notesOf(derivation: Derivation): string[] {
  return [
    ...new Set(
      [...derivation.notes, ...derivation.sources.flatMap((source) => source.notes)].map(asSentence),
    ),
  ];
}

/** The whole derivation as plain text, for a letter or a report. */
export function derivationText(derivation: Derivation, system: System): string {
  const both = ({ people, si }: ShownValue) => (si === null ? people : `${people} (${si})`);
  const lines = [
    derivation.title,
    `${derivation.symbol} = ${both(shownValue(derivation, system))}`,
    '',
    derivation.formula,
    ...derivation.inputs.map(
      (input) => `  ${input.symbol}: ${input.name}, ${both(shownValue(input, system))}`,
    ),
    '',
    ...derivation.sources.map(
      (source) => `Source: ${source.source} (${sourceWords[source.sourceKind]}; ${source.row})`,
    ),
    ...notesOf(derivation).map((note) => `Note: ${note}`),
  ];
  return `${lines.join('\n').trim()}\n`;
}
