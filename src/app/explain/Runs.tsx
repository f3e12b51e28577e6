import type { FormulaRun } from '../../graph/derive/formula.ts';

/** A formula in its runs: symbols slanted, indices lowered, powers raised. */
export function Runs({ runs }: { runs: readonly FormulaRun[] }) {
  let at = 0;
  return runs.map(({ set, text }) => {
    const key = at;
    at += text.length;
    switch (set) {
      case 'symbol':
        return <var key={key}>{text}</var>;
      case 'sub':
        return <sub key={key}>{text}</sub>;
      case 'sup':
        return <sup key={key}>{text}</sup>;
      default:
        return text;
    }
  });
}
