import { formulaRuns } from '../../graph/derive/formula.ts';
import { Runs } from './Runs.tsx';

/** A formula in plain type: symbols slanted, indices lowered, powers raised. */
export function Formula({ text, symbols = [] }: { text: string; symbols?: readonly string[] }) {
  return <Runs runs={formulaRuns(text, symbols)} />;
}
