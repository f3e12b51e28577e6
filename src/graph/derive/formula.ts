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
