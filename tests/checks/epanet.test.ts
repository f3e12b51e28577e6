import { beforeAll, describe, expect, test } from 'vitest';
import { frictionFactor } from '../../src/hydraulics/friction.ts';
import { solveNetwork } from '../../src/hydraulics/network.ts';
import type { Network } from '../../src/hydraulics/types.ts';
import { Epanet, epanetInput, type PlainEdge, type PlainNetwork } from '../support/epanet.ts';
import { ours, randomNetwork } from '../support/plain.ts';
import { seeded } from '../support/random.ts';
import { off } from '../support/reference.ts';

/*
 * Source: the EPANET 2.3 engine (MIT, a general-purpose pipe network engine; epanet-js 0.9.0),
 * solving the same networks with air as the fluid in the same process.
 *
 * Its pumps do not let flow back and ours do, so a network in which a fan is overpowered is drawn
 * anew. Its friction is the explicit fit of Swamee and Jain, up to 2 % off Colebrook at low
 * Reynolds numbers; where two large pressures nearly balance over a duct, its small flow magnifies
 * that. So the comparison is made twice: on networks of short ducts with Colebrook as it is (the few
 * that stray are solved again with the engine's law), and on any networks with our friction turned
 * into the engine's law, where nothing is left but the solve.
 */

const epanet = new Epanet();
beforeAll(() => epanet.load());

type Flows = ReadonlyMap<string, number>;

function solved(network: Network): Flows {
  const solution = solveNetwork(network);
  if (!solution.converged) throw new Error(solution.reason);
  return solution.flows;
}

function reynolds(plain: PlainNetwork, edge: PlainEdge, flows: Flows): number {
  const q = Math.abs(flows.get(edge.id) as number);
  return (4 * q * plain.density) / (Math.PI * plain.viscosity * (edge.duct?.diameter as number));
}

/** The engine's friction factor: Hagen-Poiseuille, Dunlop's cubic, Swamee-Jain. Source: from memory. */
function engineFriction(re: number, relativeRoughness: number): number {
  if (re < 2000) return 64 / re;
  if (re >= 4000) return 0.25 / Math.log10(relativeRoughness / 3.7 + 5.74 / re ** 0.9) ** 2;
  const y2 = relativeRoughness / 3.7 + 5.74 / 4000 ** 0.9;
  const y3 = -2 * Math.log10(y2);
  const fa = 1 / y3 ** 2;
  const fb = (2 - (3.6 / Math.LN10) * (1 / (y2 * y3)) * (5.74 / 4000 ** 0.9)) * fa;
  const r = re / 2000;
  const x1 = 7 * fa - fb;
  const x2 = 0.128 - 17 * fa + 2.5 * fb;
  const x3 = -0.128 + 13 * fa - 2 * fb;
  const x4 = r * (0.032 - 3 * fa + 0.5 * fb);
  return x1 + r * (x2 + r * (x3 + x4));
}

/** Solves with every duct's friction multiplied until it is the engine's at the flow that comes out. */
function solvedWithEngineFriction(plain: PlainNetwork): Flows {
  let flows = solved(ours(plain));
  for (let i = 0; i < 12; i++) {
    const at = flows;
    flows = solved(
      ours(plain, (edge) => {
        const re = Math.max(1, reynolds(plain, edge, at));
        const roughness = (edge.duct?.roughness as number) / (edge.duct?.diameter as number);
        return engineFriction(re, roughness) / frictionFactor(re, roughness);
      }),
    );
  }
  return flows;
}

const forward = (plain: PlainNetwork, flows: Flows): boolean =>
  plain.edges.every((edge) => !edge.fan || (flows.get(edge.id) as number) > 0);

/** Largest relative difference over the edges that carry more than 5 % of the largest flow. */
function worstAgainstEngine(plain: PlainNetwork, flows: Flows): number {
  const largest = Math.max(...[...flows.values()].map(Math.abs));
  epanet.open(epanetInput(plain));
  epanet.solve();
  let worst = 0;
  for (const edge of plain.edges) {
    const q = flows.get(edge.id) as number;
    if (Math.abs(q) > 0.05 * largest) worst = Math.max(worst, off(q, epanet.flow(edge.id)));
  }
  epanet.close();
  return worst;
}

/** 500 networks drawn from the seed, in turn trees and loops, that `solve` leaves without a fan blown backward. */
function compare(seed: number, longest: number, solve: (plain: PlainNetwork) => Flows): Compared[] {
  const random = seeded(seed);
  const compared: Compared[] = [];
  for (let drawn = 0; compared.length < 500; drawn++) {
    if (drawn > 800) throw new Error('too many networks in which a fan is overpowered');
    const plain = randomNetwork(random, compared.length % 2 === 1, longest);
    const flows = solve(plain);
    if (forward(plain, flows)) compared.push({ plain, worst: worstAgainstEngine(plain, flows) });
  }
  return compared;
}

interface Compared {
  readonly plain: PlainNetwork;
  readonly worst: number;
}

describe('500 random networks, half trees and half with loops, 1 to 5 fans, beside the EPANET engine', () => {
  test('every edge above 5 % of the largest flow is within 0.5 %, in at least 98 of 100 with exact Colebrook friction', () => {
    const compared = compare(2024, 2.5, (plain) => solved(ours(plain)));
    const strayed = compared.filter(({ worst }) => worst > 0.005);
    expect(strayed.length).toBeLessThanOrEqual(10);
    for (const { plain } of strayed) {
      expect(worstAgainstEngine(plain, solvedWithEngineFriction(plain))).toBeLessThan(0.005);
    }
  });

  test("every edge above 5 % of the largest flow is within 0.1 % with the engine's own friction law", () => {
    const compared = compare(7, 12, solvedWithEngineFriction);
    expect(Math.max(...compared.map(({ worst }) => worst))).toBeLessThan(0.001);
  });
});
