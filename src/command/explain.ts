import type { Derivation, DerivationInput } from '../graph/derive/derivation.ts';
import { derive, figuresOf } from '../graph/derive/derive.ts';
import type { Job } from '../graph/document.ts';
import type { SchemeSolution } from '../graph/solution.ts';
import { type QuantityKind, quantity, type System } from '../units/index.ts';

/** The derivation of every figure of one speed; none for a speed without numbers. */
export function explained(job: Job, solution: SchemeSolution, speed: number): Derivation[] {
  return figuresOf(solution, speed).flatMap((ref) => derive(job, solution, ref) ?? []);
}

/** A derivation as text: title and value, then formula, inputs, sources and notes, a line each. */
export function derivationText(derivation: Derivation, units: System): string {
  const { title, symbol, formula, inputs, sources, notes } = derivation;
  const lines = [
    `    ${title}: ${symbol} = ${shown(derivation, units)}`,
    `      formula  ${formula}`,
    ...inputs.map((input) => `      with     ${input.symbol} = ${shown(input, units)}, ${input.name}`),
    ...sources.map(({ row, source, sourceKind }) => `      source   ${source} (${sourceKind}; ${row})`),
    ...sources.flatMap((source) => source.notes).map((note) => `      note     ${note}`),
    ...notes.map((note) => `      note     ${note}`),
  ];
  return [...new Set(lines)].join('\n');
}

/** A value in SI, and in the job's units where they say it otherwise. */
function shown(
  { value, unit, kind }: Pick<DerivationInput, 'value' | 'unit'> & { readonly kind?: QuantityKind },
  units: System,
): string {
  const si = `${number(value)}${unit === '' ? '' : ` ${unit}`}`;
  const own = kind === undefined ? undefined : quantity(kind, value, units).text;
  return own === undefined ? si : `${si} (${own})`;
}

/** Six figures, without an exponent where the number is of an ordinary size. */
function number(value: number): string {
  if (value === 0) return '0';
  const size = Math.abs(value);
  return size >= 1e-4 && size < 1e7 ? String(Number(value.toPrecision(6))) : value.toExponential(5);
}
