import { formulaRuns } from '../../graph/derive/formula.ts';

/** A formula in plain type: symbols slanted, indices lowered, powers raised. */
export function Formula({ text, symbols = [] }: { text: string; symbols?: readonly string[] }) {
  const runs = formulaRuns(text, symbols);
  let at = 0;
  return runs.map((run) => {
    const key = at;
    at += run.text.length;
    switch (run.set) {
      case 'symbol':
        return <var key={key}>{run.text}</var>;
      case 'sub':
        return <sub key={key}>{run.text}</sub>;
      case 'sup':
        return <sup key={key}>{run.text}</sup>;
      default:
        return run.text;
    }
  });
}
