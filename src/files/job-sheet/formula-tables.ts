import type { Derivation, DerivationInput, FigureRef } from '../../graph/derive/derivation.ts';
import { shownValue, significant } from '../../graph/derive/text.ts';
import { sentence } from '../../graph/places.ts';
import type { SoundCause } from '../../hydraulics/sound.ts';
import { words } from '../../words/index.ts';
import type { Subject } from './subject.ts';
import { type ColumnOf, tableOf } from './tables.ts';
import type { SheetCell, SheetTable } from './types.ts';

const say = words.jobSheet.appendix;

/** Significant figures of what is worked with by hand. */
const DIGITS = 6;
/** Columns of speeds that stand beside each other. */
const SPEEDS_ABREAST = 4;

/** The number of the formula that gives these figures; empty where none does. */
export type NumberOf = (refs: readonly FigureRef[]) => string;

/** A derivation and the index of the speed that it is of; null where it is of none. */
export interface Told {
  readonly derivation: Derivation;
  readonly speed: number | null;
}

/** Inputs that stand side by side. */
const INPUTS_ABREAST = 8;

/** True for what has no place, or many inputs: one column a speed tells it best. */
export function isBySpeed({ derivation: { ref, inputs } }: Told): boolean {
  return ref.at === undefined || isSum(ref) || inputs.length > INPUTS_ABREAST;
}

/** A sum of sound, whose place is a cause. */
function isSum({ figure }: FigureRef): boolean {
  return figure === 'sound at the cook' || figure === 'sound outside';
}

/** "low", or "Range hood, low" where there are several hoods. */
export function speedWords({ solution }: Subject, index: number | null): string {
  const speed = index === null ? undefined : solution.speeds[index];
  if (!speed) return '';
  const several = new Set(solution.speeds.map(({ hood }) => hood)).size > 1;
  return several ? say.named(`${speed.hoodName},`, speed.name) : speed.name;
}

/** "Leg 3", "90° smooth elbow at turn 1"; empty for what has no place. */
function placeWords({ derivation, speed }: Told, { solution, places, legNumbers }: Subject): string {
  const { at } = derivation.ref;
  if (at === undefined) return '';
  if (isSum(derivation.ref)) return sentence(words.causes.sound[at as SoundCause]);
  const leg = legNumbers.get(at);
  if (leg !== undefined) return say.leg(leg);
  const outcome = speed === null ? undefined : solution.speeds[speed]?.outcome;
  if (!outcome?.solved) return at;
  const fitting = outcome.fittings.find(({ id }) => id === at);
  if (fitting) {
    const number = legNumbers.get(fitting.at);
    const place = number === undefined ? places.brief(fitting.at) : say.inLeg(number);
    return sentence(words.jobSheet.route.at(fitting.label, place));
  }
  const booster = outcome.boosters.find(({ node }) => node === at);
  return booster?.name ?? words.derivation.sound.hoodFan;
}

/** Whose a note is among the uses of a formula: a place's, else a speed's. */
export function ownerWords(told: Told, subject: Subject): string {
  const { ref } = told.derivation;
  return ref.at === undefined || isSum(ref) ? speedWords(subject, told.speed) : placeWords(told, subject);
}

interface PlaceRow {
  readonly places: string[];
  readonly speeds: number[];
  readonly derivation: Derivation;
}

/** Derivations of the same numbers, with all their places and speeds. */
function alike(told: readonly Told[], subject: Subject): PlaceRow[] {
  const bySpeeds = new Map<string, PlaceRow>();
  for (const one of told) {
    const { derivation, speed } = one;
    const key = JSON.stringify([derivation.ref.at, valuesOf(derivation)]);
    const row = bySpeeds.get(key) ?? { places: [placeWords(one, subject)], speeds: [], derivation };
    if (speed !== null) row.speeds.push(speed);
    bySpeeds.set(key, row);
  }
  const byPlaces = new Map<string, PlaceRow>();
  for (const row of bySpeeds.values()) {
    const rows = row.derivation.sources.map((source) => source.row);
    const key = JSON.stringify([row.speeds, valuesOf(row.derivation), rows]);
    const known = byPlaces.get(key);
    if (known) known.places.push(...row.places);
    else byPlaces.set(key, row);
  }
  return [...byPlaces.values()];
}

/** The figures of a row as they are printed. */
function valuesOf({ value, inputs }: Derivation): string[] {
  return [value, ...inputs.map((input) => input.value)].map((figure) => number(figure).text);
}

/** "Legs 1, 3, 4", "90° smooth bend at turn 1; 90° smooth bend at turn 2". */
function together(places: readonly string[]): string {
  const [first = ''] = places;
  if (places.length === 1) return first;
  const numbers = places.map((place) => place.match(/ (\d+)$/)?.[1]);
  const [stem] = first.match(/^.* (?=\d+$)/) ?? [''];
  if (stem !== '' && places.every((place, i) => place === `${stem}${numbers[i]}`))
    return stem === say.leg(0).replace('0', '')
      ? say.legs(numbers.join(', '))
      : `${stem}${numbers.join(', ')}`;
  return places.join('; ');
}

/** One row a place and speed with the inputs side by side; places and speeds at which nothing differs share a row. */
export function byPlace(told: readonly Told[], subject: Subject): SheetTable {
  const [{ derivation: first }] = told as [Told];
  const rows = alike(told, subject);
  const solved = subject.solution.speeds.flatMap(({ outcome }, i) => (outcome.solved ? [i] : []));
  const ownSources = sourcesBeyondShared(told);
  const columns: ColumnOf<PlaceRow>[] = [
    {
      id: 'where',
      head: say.where,
      weight: Math.max(8, ...rows.map(({ places }) => Math.min(30, together(places).length))),
      cell: ({ places }) => together(places),
    },
    {
      id: 'speed',
      head: say.at,
      weight: 9,
      cell: ({ speeds }) =>
        speeds.length === solved.length
          ? say.every
          : speeds.map((index) => speedWords(subject, index)).join(', '),
    },
    ...first.inputs.map(
      (input, i): ColumnOf<PlaceRow> => symbolColumn(`input ${i}`, input, rows, ({ inputs }) => inputs[i]),
    ),
    symbolColumn('result', first, rows, (derivation) => derivation),
    ...(hasOwnUnits(told, subject) ? [ownUnits(subject, rows)] : []),
    ...(sourcesDiffer(told)
      ? [
          {
            id: 'row',
            head: say.row,
            weight: Math.max(...rows.map(({ derivation }) => ownSources(derivation).length + 1)),
            cell: ({ derivation }: PlaceRow) => ownSources(derivation),
          },
        ]
      : []),
  ];
  return tableOf(`by place/${first.ref.figure}`, rows, columns, {
    rowId: ({ derivation, speeds }) => `${derivation.ref.at}/${speeds[0]}`,
  });
}

function symbolColumn(
  id: string,
  { symbol, unit }: Pick<DerivationInput, 'symbol' | 'unit'>,
  rows: readonly PlaceRow[],
  of: (derivation: Derivation) => Pick<DerivationInput, 'value'> | undefined,
): ColumnOf<PlaceRow> {
  const texts = rows.map(({ derivation }) => number(of(derivation)?.value).text);
  return {
    id,
    head: symbol,
    symbol: true,
    ...(unit === '' ? {} : { unit }),
    align: 'right',
    weight: Math.max(5, ...[symbol, unit, ...texts].map(({ length }) => length + 2)),
    cell: ({ derivation }) => number(of(derivation)?.value),
  };
}

function ownUnits({ units }: Subject, rows: readonly PlaceRow[]): ColumnOf<PlaceRow> {
  const shown = ({ derivation }: PlaceRow) => shownValue(derivation, units).people;
  return {
    id: 'shown',
    head: say.shown,
    align: 'right',
    weight: Math.max(10, ...rows.map((row) => shown(row).length + 1)),
    cell: (row) => ({ text: shown(row), si: row.derivation.value }),
  };
}

function hasOwnUnits(told: readonly Told[], { units }: Subject): boolean {
  return told.some(({ derivation }) => shownValue(derivation, units).si !== null);
}

function sourcesDiffer(told: readonly Told[]): boolean {
  return new Set(told.map(({ derivation }) => derivation.sources.map(({ row }) => row).join())).size > 1;
}

/** Tells the catalogue rows behind one derivation that not all in the table share. */
function sourcesBeyondShared(told: readonly Told[]): (derivation: Derivation) => string {
  const uses = new Map<string, number>();
  for (const { derivation } of told)
    for (const row of new Set(derivation.sources.map((source) => source.row)))
      uses.set(row, (uses.get(row) ?? 0) + 1);
  return ({ sources }) =>
    sources.flatMap(({ row }) => (uses.get(row) === told.length ? [] : [row])).join(', ');
}

interface InputRow {
  readonly input: Pick<DerivationInput, 'symbol' | 'name' | 'unit' | 'ref'>;
  /** By the speed's place in the table. */
  readonly values: readonly (Pick<DerivationInput, 'value' | 'unit' | 'kind' | 'ref'> | undefined)[];
  /** The figures that an input is. */
  readonly refs: readonly FigureRef[];
  readonly kind: 'input' | 'result' | 'shown';
}

/**
 * One row an input and one column a speed, four speeds abreast; the result under them, then in the job's units.
 * Each place, or cause, has tables of its own.
 */
export function bySpeed(told: readonly Told[], subject: Subject, numberOf: NumberOf): SheetTable[] {
  const places = new Map<string, Told[]>();
  for (const one of told) {
    const { at = '' } = one.derivation.ref;
    places.set(at, [...(places.get(at) ?? []), one]);
  }
  return [...places].flatMap(([at, those]) => {
    const tables: SheetTable[] = [];
    for (let start = 0; start < those.length; start += SPEEDS_ABREAST) {
      const table = speedTable(those.slice(start, start + SPEEDS_ABREAST), subject, numberOf);
      tables.push(at === '' ? table : { ...table, caption: placeWords(those[0] as Told, subject) });
    }
    return tables;
  });
}

function speedTable(told: readonly Told[], subject: Subject, numberOf: NumberOf): SheetTable {
  const [{ derivation: first }] = told as [Told];
  const constant = told.length > 1 && told.every(({ derivation }) => sameValues(derivation, first));
  const shown = constant ? told.slice(0, 1) : told;
  const byKey = shown.map(({ derivation }) => keyed(derivation.inputs));
  const inputs = keyed(shown.flatMap(({ derivation }) => derivation.inputs));
  const result = { ...first, name: words.derivation.figures[first.ref.figure] };
  const rows: InputRow[] = [
    ...[...inputs].map(([key, input]): InputRow => {
      const values = byKey.map((own) => own.get(key));
      return { input, values, refs: values.flatMap((value) => value?.ref ?? []), kind: 'input' };
    }),
    { input: result, values: shown.map(({ derivation }) => derivation), refs: [], kind: 'result' },
    ...(hasOwnUnits(told, subject)
      ? [
          {
            input: { ...result, name: say.shown, unit: '' },
            values: shown.map(({ derivation }) => derivation),
            refs: [],
            kind: 'shown',
          } as const,
        ]
      : []),
  ];
  const cellOf = ({ values, kind }: InputRow, i: number): SheetCell => {
    const value = values[i];
    if (kind !== 'shown' || !value) return number(value?.value);
    return { text: shownValue(value, subject.units).people, si: value.value };
  };
  const width = 3 + Math.max(...rows.flatMap((row) => shown.map((_, i) => cellOf(row, i).text.length)));
  const speedColumn = ({ speed }: Told, i: number): ColumnOf<InputRow> => ({
    id: `speed ${speed ?? ''}`,
    head: speed === null ? say.result : constant ? say.every : speedWords(subject, speed),
    align: 'right',
    weight: width,
    cell: (row) => cellOf(row, i),
  });
  return tableOf(
    `by speed/${first.ref.figure}${first.ref.at === undefined ? '' : `/${first.ref.at}`}`,
    rows,
    [
      {
        id: 'symbol',
        head: say.symbol,
        weight: 8,
        symbolCells: true,
        cell: ({ input, kind }) => (kind === 'shown' ? '' : input.symbol),
      },
      { id: 'what', head: say.what, weight: 40, cell: ({ input }) => input.name },
      {
        id: 'from',
        head: say.from,
        weight: 9,
        cell: ({ refs, kind }) => (kind === 'input' ? numberOf(refs) : ''),
      },
      { id: 'unit', head: say.unit, weight: 11, cell: ({ input }) => input.unit },
      ...shown.map(speedColumn),
    ],
    { rowId: ({ input, kind }, i) => `${kind} ${i} ${input.symbol}`, total: ({ kind }) => kind === 'result' },
  );
}

/** Inputs by what tells one from another, the first of each. */
function keyed(inputs: readonly DerivationInput[]): Map<string, DerivationInput> {
  const found = new Map<string, DerivationInput>();
  for (const input of inputs) {
    const key = JSON.stringify([input.symbol, input.name, input.ref?.at]);
    if (!found.has(key)) found.set(key, input);
  }
  return found;
}

function sameValues(a: Derivation, b: Derivation): boolean {
  return (
    a.value === b.value &&
    a.inputs.length === b.inputs.length &&
    a.inputs.every(({ value, name }, i) => value === b.inputs[i]?.value && name === b.inputs[i]?.name)
  );
}

function number(value: number | undefined): SheetCell {
  return value === undefined ? { text: '' } : { text: significant(value, DIGITS), si: value };
}
