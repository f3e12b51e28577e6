import type { Figure, Tolerance, Value } from './figure.ts';
import { figures } from './figure.ts';
import { leftOut, type Verdict, verdicts } from './verdicts.ts';

const letters: Readonly<Record<string, string>> = {
  A: 'Friction',
  B: 'Loss coefficients',
  C: 'Codes',
  D: 'Trade rules',
  E: 'Air',
  F: 'House pressure',
  G: 'Sound',
  H: 'Worked examples',
  I: 'Fan laws',
};

const kinds = { found: 'read in a copy of the source', memory: 'recalled, to be verified there' } as const;

/** The page of checks: every published figure beside the model's, with its source, as Markdown. */
export function checksPage(): string {
  const all = verdicts();
  const agreeing = all.filter(({ reason }) => reason === undefined);
  const disagreeing = all.filter(({ reason }) => reason !== undefined);
  const missing = leftOut();
  return [
    '# Checks against published figures',
    '',
    `Of ${figures.length} published figures the model computes ${all.length}: ${agreeing.length} agree within the tolerance that`,
    `stands beside them, ${disagreeing.length} do not, and each of those has its reason below. ${missing.size} are not computed.`,
    'Figures of tables and codes are looked up the way a solve does it, so that a slip in copying or reading shows here.',
    'Where a source was recalled and not read, its heading says so.',
    '',
    'This page is written by `npm run docs`; a test fails while it is stale.',
    '',
    ...tally(all, missing),
    '## Figures that disagree',
    '',
    ...table(
      ['id', 'figure', 'published', 'ours', 'difference', 'source', 'reason'],
      disagreeing.map((verdict) => [
        verdict.figure.id,
        described(verdict.figure),
        ...numbers(verdict),
        `${verdict.figure.source} (${verdict.figure.source_kind})`,
        verdict.reason ?? '',
      ]),
    ),
    '## Figures that agree',
    '',
    ...bySource(agreeing).flatMap(agreeingSection),
    '## Figures that are not computed',
    '',
    ...byReason(missing),
  ].join('\n');
}

function tally(all: readonly Verdict[], missing: ReadonlyMap<string, string>): string[] {
  const count = (letter: string, ids: readonly string[]) => ids.filter((id) => id.startsWith(letter)).length;
  const ids = (keep: (verdict: Verdict) => boolean) => all.filter(keep).map(({ figure }) => figure.id);
  const agree = ids((verdict) => verdict.agrees);
  const disagree = ids((verdict) => !verdict.agrees);
  return table(
    ['', 'subject', 'agree', 'disagree', 'not computed'],
    Object.entries(letters).map(([letter, subject]) => [
      letter,
      subject,
      ...[agree, disagree, [...missing.keys()]].map((list) => String(count(letter, list))),
    ]),
  );
}

interface Section {
  readonly heading: string;
  readonly verdicts: Verdict[];
}

function bySource(all: readonly Verdict[]): Section[] {
  const sections = new Map<string, Section>();
  for (const verdict of all) {
    const { id, source, source_kind } = verdict.figure;
    const subject = letters[id.charAt(0)] ?? id;
    const heading = `${subject}: ${source} (${kinds[source_kind]})`;
    const section = sections.get(heading) ?? { heading, verdicts: [] };
    section.verdicts.push(verdict);
    sections.set(heading, section);
  }
  return [...sections.values()];
}

function agreeingSection({ heading, verdicts: all }: Section): string[] {
  return [
    `### ${heading}`,
    '',
    ...table(
      ['id', 'figure', 'published', 'ours', 'difference', 'allowed', 'by'],
      all.map((verdict) => [
        verdict.figure.id,
        described(verdict.figure),
        ...numbers(verdict),
        allowed(verdict),
        verdict.by,
      ]),
    ),
  ];
}

function byReason(missing: ReadonlyMap<string, string>): string[] {
  const groups = new Map<string, string[]>();
  for (const [id, why] of missing) groups.set(why, [...(groups.get(why) ?? []), id]);
  return table(
    ['ids', 'reason'],
    [...groups].map(([why, ids]) => [ids.join(', '), why]),
  );
}

function described(figure: Figure): string {
  const inputs = Object.entries(figure.inputs).map(([name, value]) => `${name} ${value}`);
  return inputs.length === 0 ? figure.quantity : `${figure.quantity}; ${inputs.join(', ')}`;
}

/** Published, ours and the difference between them. */
function numbers({ figure, ours, tolerance }: Verdict): string[] {
  const unit = figure.unit === '-' ? '' : ` ${figure.unit}`;
  return [`${shown(figure.value)}${unit}`, shown(ours), difference(ours, figure.value, tolerance)];
}

function shown(value: Value): string {
  if (typeof value === 'object') return value.map(shown).join(', ');
  return typeof value === 'number' ? String(Number(value.toPrecision(5))) : String(value);
}

function difference(ours: Value, published: Value, tolerance: Tolerance): string {
  if (tolerance === 'within the range') return 'within the range';
  if (typeof published === 'string' || typeof published === 'boolean')
    return ours === published ? 'none' : 'another';
  const theirs = typeof published === 'number' ? [published] : published;
  const mine = typeof ours === 'number' ? [ours] : (ours as readonly number[]);
  const worst = Math.max(
    ...theirs.map((value, i) => {
      const gap = Math.abs((mine[i] ?? Number.NaN) - value);
      return gap === 0 ? 0 : value === 0 ? Number.POSITIVE_INFINITY : gap / Math.abs(value);
    }),
  );
  if (worst < 5e-7) return 'none';
  return `${Number((100 * worst).toPrecision(2))} %`;
}

function allowed({ tolerance, because }: Verdict): string {
  const width =
    tolerance === 'within the range'
      ? tolerance
      : 'abs' in tolerance
        ? `±${tolerance.abs}`
        : tolerance.rel <= 1e-6
          ? 'exact'
          : `${Number((100 * tolerance.rel).toPrecision(3))} %`;
  return because === undefined ? width : `${width} (${because})`;
}

function table(head: readonly string[], rows: readonly (readonly string[])[]): string[] {
  const line = (cells: readonly string[]) =>
    `| ${cells.map((cell) => cell.replaceAll('|', '/')).join(' | ')} |`;
  return [line(head), line(head.map(() => '---')), ...rows.map(line), ''];
}
