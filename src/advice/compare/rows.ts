import {
  formatFlow,
  formatNumber,
  formatPressure,
  formatRun,
  formatVelocity,
  type System,
} from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { formatMoney } from '../cost/price.ts';
import type { PartKind } from '../parts.ts';
import type { SchemeFigures } from './figures.ts';

const says = words.compare.rows;

export interface Cell {
  readonly text: string;
  /** A second line. */
  readonly note?: string;
  /** The best of its row, where the row has a best and its cells differ as they are printed. */
  readonly best: boolean;
  /** Short of what is required. */
  readonly short?: boolean;
}

export interface Row {
  readonly id: string;
  readonly title: string;
  readonly cells: readonly Cell[];
  /** True where the schemes differ as they are printed. */
  readonly differs: boolean;
}

interface Draft {
  readonly id: string;
  readonly title: string;
  readonly better: 'more' | 'less' | null;
  readonly value: (scheme: SchemeFigures) => number | null;
  readonly text: (value: number) => string;
  readonly note?: (scheme: SchemeFigures) => string | undefined;
  readonly short?: (value: number, scheme: SchemeFigures) => boolean;
}

/** The figures of two or more schemes row by row, with the best of each row marked. */
export function rowsOf(schemes: readonly SchemeFigures[], units: System): readonly Row[] {
  return drafts(schemes, units).map((draft) => rowOf(draft, schemes));
}

function rowOf(
  { id, title, better, value, text, note, short }: Draft,
  schemes: readonly SchemeFigures[],
): Row {
  const values = schemes.map(value);
  const texts = values.map((each) => (each === null ? '–' : text(each)));
  const differs = new Set(texts).size > 1;
  const known = values.filter((each) => each !== null);
  const extreme = better === 'less' ? Math.min(...known) : Math.max(...known);
  const best = differs && better !== null && known.length > 0 ? text(extreme) : null;
  const cells = schemes.map((scheme, i): Cell => {
    const told = note?.(scheme);
    const at = values[i] ?? null;
    return {
      text: texts[i] ?? '–',
      best: best !== null && texts[i] === best,
      ...(told === undefined ? {} : { note: told }),
      ...(at !== null && short?.(at, scheme) ? { short: true } : {}),
    };
  });
  return { id, title, cells, differs };
}

function drafts(schemes: readonly SchemeFigures[], units: System): Draft[] {
  const speeds = new Map(schemes.flatMap(({ air }) => air.map(({ key, name }) => [key, name] as const)));
  const count = (n: number) => String(n);
  return [
    ...[...speeds].map(
      ([key, name]): Draft => ({
        id: `air/${key}`,
        title: says.airAt(name),
        better: 'more',
        value: ({ air }) => air.find((one) => one.key === key)?.flow ?? null,
        text: (flow) => formatFlow(flow, units),
        short: (flow, { need }) => flow < need,
      }),
    ),
    {
      id: 'total',
      title: says.fanPressure,
      better: null,
      value: ({ solved }) => solved?.totalPressure ?? null,
      text: (pressure) => formatPressure(pressure, units),
    },
    {
      id: 'sound',
      title: says.sound,
      better: 'less',
      value: ({ solved }) => (solved?.sound.fan.rated ? solved.sound.cook.level : null),
      text: (level) => says.decibels(formatNumber(level, 0)),
      note: ({ solved }) => (solved ? says.uncertainty(String(solved.sound.uncertainty)) : undefined),
    },
    {
      id: 'house',
      title: says.house,
      better: 'more',
      value: ({ solved }) => solved?.house?.pressure ?? null,
      text: (pressure) => formatPressure(pressure, 'metric'),
      note: ({ solved }) =>
        solved?.house?.limit ? says.limit(formatPressure(solved.house.limit.value, 'metric')) : undefined,
      short: (pressure, { solved }) => pressure < -(solved?.house?.limit?.value ?? Number.POSITIVE_INFINITY),
    },
    {
      id: 'fastest',
      title: says.fastest,
      better: null,
      value: ({ fastest }) => fastest?.velocity ?? null,
      text: (velocity) => formatVelocity(velocity, units),
      note: ({ fastest }) => fastest?.where,
    },
    {
      id: 'length',
      title: says.length,
      better: 'less',
      value: ({ length }) => length,
      text: (length) => formatRun(length, units),
    },
    { id: 'turns', title: says.turns, better: 'less', value: ({ turns }) => turns, text: count },
    {
      id: 'cost',
      title: says.parts,
      better: 'less',
      value: ({ cost }) => cost.total,
      text: (cost) => formatMoney(cost),
      note: (scheme) => partsWords(scheme, units),
    },
    {
      id: 'errors',
      title: says.errors,
      better: 'less',
      value: ({ counts }) => counts.error + counts.danger,
      text: count,
    },
    {
      id: 'warnings',
      title: says.warnings,
      better: 'less',
      value: ({ counts }) => counts.warning,
      text: count,
    },
  ];
}

const counted: readonly (readonly [PartKind, (n: number) => string])[] = [
  ['bend', words.counts.bends],
  ['transition', words.counts.reducers],
  ['coupling', words.counts.couplings],
  ['hanger', words.counts.hangers],
];

/** "17.4 ft of duct, 2 bends, 3 couplings". */
function partsWords({ cost }: SchemeFigures, units: System): string {
  const sum = (kind: PartKind) =>
    cost.lines.filter(({ part }) => part.kind === kind).reduce((n, { part }) => n + part.quantity, 0);
  const things = counted.flatMap(([kind, told]) => {
    const n = sum(kind);
    return n > 0 ? [told(n)] : [];
  });
  const open = cost.unpriced > 0 ? [says.unpriced(cost.unpriced)] : [];
  return [says.duct(formatRun(sum('duct'), units)), ...things, ...open].join(', ');
}
