import { requiredDerivation } from '../../advice/required.ts';
import type { Derivation, Figure, FigureRef } from '../../graph/derive/derivation.ts';
import { explained } from '../../graph/derive/derive.ts';
import { formulaRuns } from '../../graph/derive/formula.ts';
import { notesOf, sourceText } from '../../graph/derive/text.ts';
import { words } from '../../words/index.ts';
import { byPlace, bySpeed, isBySpeed, type NumberOf, ownerWords, type Told } from './formula-tables.ts';
import { inputBlocks } from './inputs.ts';
import type { Subject } from './subject.ts';
import type { Fingerprint, FormulaBlock, SheetBlock } from './types.ts';

const say = words.jobSheet.appendix;

/** From what is given to what follows from it. */
const order: readonly Figure[] = [
  'required airflow',
  'density',
  'viscosity',
  'velocity',
  'velocity pressure',
  'Reynolds number',
  'friction factor',
  'friction length',
  'loss per metre',
  'friction loss',
  'coefficient',
  'fitting loss',
  'equivalent length',
  'total pressure',
  'static pressure',
  'booster pressure',
  'flow',
  'share of pressure',
  'rated flow',
  'share of rated',
  'house leakage',
  'house pressure',
  'make-up air',
  'heat transfer',
  'inlet temperature',
  'outlet temperature',
  'dew point',
  'wall temperature',
  'sound at the cook',
  'source at the cook',
  'sound outside',
  'source outside',
];

/**
 * Every formula once, with all its inputs at every place and speed, what was entered before them, and the file's
 * fingerprint. Stops after each speed and each formula, which are the longest work of a job sheet.
 */
export function* appendixBlocks(
  subject: Subject,
  fingerprint: Fingerprint,
): Generator<void, SheetBlock[], undefined> {
  const formulas = yield* formulaBlocks(subject);
  return [
    { kind: 'text', text: say.lead },
    ...inputBlocks(subject),
    ...formulas,
    { kind: 'heading', text: say.fingerprint },
    { kind: 'text', text: say.fingerprintText(fingerprint.full) },
  ];
}

/** Derivations that have one formula with the same inputs. */
interface Group {
  readonly figure: Figure;
  readonly told: Told[];
}

function* formulaBlocks(subject: Subject): Generator<void, FormulaBlock[], undefined> {
  const groups = grouped(yield* derivationsOf(subject));
  const numbers = new Map<string, number>();
  groups.forEach(({ told }, i) => {
    for (const { derivation } of told) numbers.set(keyOf(derivation.ref), i + 1);
  });
  const numberOf: NumberOf = (refs) => {
    const found = new Set(refs.flatMap((ref) => numbers.get(keyOf(ref)) ?? []));
    return [...found]
      .sort((a, b) => a - b)
      .map((n) => `A.${n}`)
      .join(', ');
  };
  const said = new Set<string>();
  const blocks: FormulaBlock[] = [];
  for (const [i, { figure, told }] of groups.entries()) {
    yield;
    const [{ derivation }] = told as [Told];
    const symbols = [derivation.symbol, ...derivation.inputs.map(({ symbol }) => symbol)];
    const speedWise = isBySpeed(told[0] as Told);
    const notes = notesAmong(told, said, (one) => ownerWords(one, subject));
    blocks.push({
      kind: 'formula',
      id: `${figure}/${i}`,
      number: `A.${i + 1}`,
      title: words.derivation.figures[figure],
      formula: derivation.formula,
      runs: formulaRuns(derivation.formula, symbols),
      inputs: speedWise
        ? []
        : derivation.inputs.map(({ symbol, name, unit }, k) => {
            const from = numberOf(told.flatMap(({ derivation: one }) => one.inputs[k]?.ref ?? []));
            return { symbol, runs: formulaRuns(symbol, [symbol]), name, unit, ...(from ? { from } : {}) };
          }),
      sources: [...new Set(told.flatMap(({ derivation: one }) => one.sources.map(sourceText)))],
      notes,
      tables: speedWise ? bySpeed(told, subject, numberOf) : [byPlace(told, subject)],
    });
  }
  return blocks;
}

function* derivationsOf({ job, solution }: Subject): Generator<void, Told[], undefined> {
  const all: Told[] = [{ derivation: requiredDerivation(job.kitchen), speed: null }];
  for (const speed of solution.speeds.keys()) {
    for (const derivation of explained(job, solution, speed)) all.push({ derivation, speed });
    yield;
  }
  return all;
}

function grouped(all: readonly Told[]): Group[] {
  const groups = new Map<string, Group>();
  for (const told of all) {
    const { ref, formula, inputs } = told.derivation;
    const symbols = isBySpeed(told) ? [] : inputs.map(({ symbol }) => symbol);
    const key = JSON.stringify([ref.figure, formula, symbols]);
    const group = groups.get(key) ?? { figure: ref.figure, told: [] };
    group.told.push(told);
    groups.set(key, group);
  }
  return [...groups.values()].sort((a, b) => order.indexOf(a.figure) - order.indexOf(b.figure));
}

function keyOf({ figure, at, speed }: FigureRef): string {
  return JSON.stringify([figure, at, speed]);
}

/** The parts of a loss are told by the formula of its coefficient. */
function notesToPrint(derivation: Derivation): readonly string[] {
  return derivation.ref.figure === 'fitting loss' ? [] : notesOf(derivation);
}

/** What is noted and was not said before; where not all in the group have it, after the names of those who do. */
function notesAmong(told: readonly Told[], said: Set<string>, nameOf: (one: Told) => string): string[] {
  const by = new Map<string, Set<string>>();
  for (const one of told)
    for (const note of notesToPrint(one.derivation))
      by.set(note, (by.get(note) ?? new Set()).add(nameOf(one)));
  const all = new Set(told.map(nameOf)).size;
  return [...by].flatMap(([note, names]) => {
    if (said.has(note)) return [];
    said.add(note);
    return names.size === all ? note : say.noteOf([...names].join(', '), note);
  });
}
