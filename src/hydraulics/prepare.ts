import { buildChains, type Chains } from './chains.ts';
import { type CorePlan, planCore } from './core.ts';
import { incidence, type Layout, layOut, walkOutward } from './layout.ts';
import { type Indexed, indexNetwork } from './network-index.ts';
import type { Network } from './types.ts';

/** A network made ready to be solved, as often as one likes and from any start. */
export interface Prepared {
  readonly network: Network;
  readonly indexed: Indexed;
  readonly layout: Layout;
  readonly chains: Chains;
  /** Chains between given pressures, and loops on one node: each is an equation by itself. */
  readonly alone: Int32Array;
  /** Chains that have to be solved together; null where there are none. */
  readonly core: CorePlan | null;
}

/** Numbers a network, lays out its chains and plans its elimination; or says why it cannot be solved. */
export function prepareNetwork(network: Network): Prepared | { readonly reason: string } {
  const indexed = indexNetwork(network);
  if ('reason' in indexed) return indexed;
  const { fixed, inflow, from, to } = indexed;
  const around = incidence(fixed.length, from, to);
  const { outward, unreached } = walkOutward(fixed, from, to, around);
  if (unreached >= 0) {
    return {
      reason: `The piece with node "${network.nodes[unreached]?.id}" is open nowhere: none of its pressures is given.`,
    };
  }
  const ends = fixed.map((given, v) => (given === 1 || inflow[v] !== 0 ? 1 : 0));
  const layout = layOut(ends, from, to, around, outward);
  const chains = buildChains(network.edges, layout, network.air, indexed.pressureScale);
  const alone: number[] = [];
  const joint: number[] = [];
  for (let c = 0; c < chains.count; c++) {
    const a = layout.from[c] as number;
    const b = layout.to[c] as number;
    (a === b || (fixed[a] === 1 && fixed[b] === 1) ? alone : joint).push(c);
  }
  const members = new Int32Array(joint);
  const core = joint.length === 0 ? null : planCore(chains, members, layout, indexed);
  return { network, indexed, layout, chains, alone: new Int32Array(alone), core };
}
