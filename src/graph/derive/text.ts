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
import {
  formatNumber,
  formatPercent,
  formatSignificant,
  formatTrimmed,
  INCH,
  quantity,
  type System,
} from '../../units/index.ts';
import { words } from '../../words/index.ts';
import type { Derivation, DerivationInput, Figure } from './derivation.ts';

const { text } = words.derivation;

/** How far a source can be trusted, in plain words. */
export const sourceWords: Readonly<Record<SourceKind, string>> = words.derivation.sourceWords;

/** A value as people read it and, where that says something more, in SI. */
export interface ShownValue {
  readonly people: string;
  readonly si: string | null;
}

const superscripts: Readonly<Record<string, string>> = {
  '-': '⁻',
  ...Object.fromEntries([...'⁰¹²³⁴⁵⁶⁷⁸⁹'].map((sign, digit) => [String(digit), sign])),
};

/** Significant digits, four unless said: `0.2431`, `142300`, `1.820 × 10⁻⁵`; a dash for what is not a number. */
export function significant(value: number, digits = 4): string {
  if (!Number.isFinite(value)) return '–';
  const size = Math.abs(value);
  if (size !== 0 && (size < 1e-3 || size >= 1e7)) {
    const [mantissa = '', exponent = ''] = value.toExponential(digits - 1).split('e');
    const raised = [...exponent.replace('+', '')].map((sign) => superscripts[sign] ?? sign).join('');
    return `${formatNumber(Number(mantissa), digits - 1)} × 10${raised}`;
  }
  return size >= 10 ** (digits - 1) ? formatNumber(value) : formatSignificant(value, digits);
}

/** Below this a length is a diameter or the like, and told finer than a run of duct, m. */
const SHORT = 0.6;

function shortLength(metres: number, system: System): string {
  return system === 'imperial'
    ? `${formatTrimmed(metres / INCH)} in`
    : `${formatTrimmed(1000 * metres, 1)} mm`;
}

const shares: readonly Figure[] = ['share of rated', 'share of pressure'];

/** The value of a derivation or of one of its inputs. */
export function shownValue(
  of: Pick<DerivationInput, 'value' | 'unit' | 'kind' | 'ref'>,
  system: System,
): ShownValue {
  if (of.unit === 'dBA') return { people: `${Math.round(of.value)} dBA`, si: null };
  const si = of.unit === '' ? significant(of.value) : `${significant(of.value)} ${of.unit}`;
  if (of.ref && shares.includes(of.ref.figure)) return { people: formatPercent(of.value), si };
  if (!of.kind) return { people: si, si: null };
  if (of.kind === 'run' && Math.abs(of.value) < SHORT) return { people: shortLength(of.value, system), si };
  const { text, unit } = quantity(of.kind, of.value, system);
  return { people: text, si: unit === of.unit ? null : si };
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

/** A source with how far it can be trusted and the row that it is of. */
export function sourceText({ source, sourceKind, row }: Provenance): string {
  return `${source} (${sourceWords[sourceKind]}; ${row})`;
}

/** A value in people's units and, where that says more, in SI: "0.25 in w.g. (62 Pa)". */
export function bothText(
  of: Pick<DerivationInput, 'value' | 'unit' | 'kind' | 'ref'>,
  system: System,
): string {
  const { people, si } = shownValue(of, system);
  return si === null ? people : `${people} (${si})`;
}

/** The whole derivation as plain text: title and value, then formula, inputs, sources and notes, a line each. */
export function derivationText(derivation: Derivation, system: System): string {
  const { title, symbol, formula, inputs, sources } = derivation;
  const lines: readonly (readonly [label: string, text: string])[] = [
    [text.formula, formula],
    ...inputs.map(
      (input) => [text.with, `${input.symbol} = ${bothText(input, system)}, ${input.name}`] as const,
    ),
    ...sources.map((source) => [text.source, sourceText(source)] as const),
    ...notesOf(derivation).map((note) => [text.note, note] as const),
  ];
  const width = Math.max(...Object.values(text).map(({ length }) => length));
  const told = lines.map(([label, said]) => `  ${label.padEnd(width)}  ${said}\n`);
  return `${title}: ${symbol} = ${bothText(derivation, system)}\n${[...new Set(told)].join('')}`;
}
