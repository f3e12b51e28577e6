import { type FormulaRun, formulaRuns } from '../../../graph/derive/formula.ts';
import { POINT } from '../../pdf/font.ts';
import type { At, Page } from '../../pdf/page.ts';
import { inks, style, type Type } from './look.ts';

const small = { sub: 0.7, sup: 0.7, upright: 1, symbol: 1 } as const;
const shift = { sub: 0.18, sup: -0.36, upright: 0, symbol: 0 } as const;

/** One run as it is set. */
export interface SetRun extends FormulaRun {
  readonly size: number;
  readonly width: number;
}

/** Runs in lines of at most `width` mm, broken at spaces of upright text. */
export function wrappedRuns(
  runs: readonly FormulaRun[],
  width: number,
  size: number,
  type: Type,
): readonly (readonly SetRun[])[] {
  const words = runs.flatMap((run): SetRun[] => {
    const texts = run.set === 'upright' ? run.text.split(/(?<= )/) : [run.text];
    const font = run.set === 'symbol' ? type.italic : type.regular;
    const own = size * small[run.set];
    return texts.map((text) => ({ ...run, text, size: own, width: font.width(text, own) }));
  });
  const lines: SetRun[][] = [[]];
  let used = 0;
  for (const word of unbroken(words)) {
    const wide = word.reduce((sum, run) => sum + run.width, 0);
    if (used > 0 && used + wide > width) {
      lines.push([]);
      used = 0;
    }
    lines[lines.length - 1]?.push(...word);
    used += wide;
  }
  return lines;
}

/** Runs that belong together because no space stands between them. */
function unbroken(runs: readonly SetRun[]): readonly (readonly SetRun[])[] {
  const groups: SetRun[][] = [];
  let open = false;
  for (const run of runs) {
    if (open) groups[groups.length - 1]?.push(run);
    else groups.push([run]);
    open = !run.text.endsWith(' ');
  }
  return groups;
}

/** Draws runs one behind the other; `at` is where their base line begins. */
export function drawRuns(page: Page, at: At, runs: readonly SetRun[], type: Type): void {
  let x = at.x;
  for (const { set, text, size, width } of runs) {
    const face = style(type, size, set === 'symbol' ? 'italic' : 'regular', inks.ink, true);
    page.text({ x, y: at.y + shift[set] * size * POINT }, text, face);
    x += width;
  }
}

/** A symbol by itself, such as the head of a column, in one line; its width in mm. */
export function drawSymbol(
  page: Page,
  at: At,
  symbol: string,
  size: number,
  align: 'left' | 'right',
  type: Type,
): void {
  const [line = []] = wrappedRuns(formulaRuns(symbol, [symbol]), Number.POSITIVE_INFINITY, size, type);
  const width = line.reduce((sum, run) => sum + run.width, 0);
  drawRuns(page, { x: align === 'left' ? at.x : at.x - width, y: at.y }, line, type);
}
