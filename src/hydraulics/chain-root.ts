import { type Chains, evaluateChain, fanKnots } from './chains.ts';
import { bracketedRoot } from './root.ts';

/** Pieces that every stretch of a fan's curve is cut into in search of several intersections. */
const PIECES = 16;

export interface ChainFlows {
  /** The stable flow: the highest where there are several. */
  readonly flow: number;
  /** Every other flow at which the chain's fans also balance it. */
  readonly others: readonly number[];
  readonly iterations: number;
}

/**
 * Flow through chain c, which is left evaluated there, with `difference` (Pa) from its start to its end. A chain whose drop can
 * only rise has one; one with a stalling fan may have several, which are all looked for over the
 * fans' curves, and of which those with a rising balance are stable.
 */
export function chainFlow(chains: Chains, c: number, difference: number, start: number): ChainFlows {
  const out = new Float64Array(2);
  let iterations = 0;
  const fill = (slots: Float64Array, q: number): void => {
    iterations++;
    evaluateChain(chains, c, q, slots);
    slots[0] = (slots[0] as number) - difference;
  };
  const balance = (q: number): number => {
    fill(out, q);
    return out[0] as number;
  };
  /** Doubles q away from 0 until the balance has the sign asked for. */
  const reach = (q: number, sign: 1 | -1): number => {
    for (let i = 0; i < 200 && !(balance(q) * sign > 0); i++) q *= 2;
    return q;
  };

  const settle = (flow: number, others: readonly number[]): ChainFlows => {
    balance(flow);
    return { flow, others, iterations };
  };

  if (chains.rises[c] === 1) {
    const atRest = balance(0);
    if (atRest === 0) return { flow: 0, others: [], iterations };
    const far = atRest < 0 ? reach(Math.abs(start), 1) : reach(-Math.abs(start), -1);
    const [below, above] = atRest < 0 ? [0, far] : [far, 0];
    return settle(bracketedRoot(fill, below, above, far, out), []);
  }

  const knots = fanKnots(chains, c);
  const reachUp = reach(Math.max(Math.abs(start), knots[knots.length - 1] as number), 1);
  const reachDown = reach(Math.min(-Math.abs(start), knots[0] as number), -1);
  const grid = [reachDown, ...knots, reachUp];
  const stable: number[] = [];
  const unstable: number[] = [];
  let below = reachDown;
  let negative = true;
  for (let k = 1; k < grid.length; k++) {
    const from = grid[k - 1] as number;
    const step = ((grid[k] as number) - from) / PIECES;
    if (step === 0) continue;
    for (let i = 1; i <= PIECES; i++) {
      const q = i === PIECES ? (grid[k] as number) : from + i * step;
      const value = balance(q);
      if (value > 0 === negative && value !== 0) {
        const root = negative ? bracketedRoot(fill, below, q, q, out) : bracketedRoot(fill, q, below, q, out);
        (negative ? stable : unstable).push(root);
        negative = !negative;
      }
      below = q;
    }
  }
  const flow = stable.pop() as number;
  return settle(flow, [...stable, ...unstable]);
}
