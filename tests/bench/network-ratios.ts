import { solveNetwork, solvePrepared } from '../../src/hydraulics/network.ts';
import { prepareNetwork } from '../../src/hydraulics/prepare.ts';
import { gatheringTree, seriesRun } from '../support/bench-networks.ts';
import { Epanet, epanetInput, type PlainNetwork } from '../support/epanet.ts';
import { ours } from '../support/plain.ts';

/*
 * Ours beside the EPANET engine (epanet-js 0.9.0) on the same networks, in the same process, turn
 * by turn. "Open and solve" starts from plain data on both sides: our nodes and edges, the engine's
 * input text. "Solve only" has everything prepared: our chains and elimination order, the engine's
 * open project; each from its own first guess, ours to 1e-10 of the flow and the engine's to 1e-8.
 * The ratio is of the fastest turns, which other work on the machine disturbs least.
 */

/** How long each pair takes turns, ms. */
const PATIENCE = 1500;

interface Times {
  readonly fastest: number;
  readonly median: number;
}

function timesOf(samples: number[]): Times {
  samples.sort((a, b) => a - b);
  return { fastest: samples[0] as number, median: samples[samples.length >> 1] as number };
}

/** Times two jobs turn by turn. */
function takeTurns(one: () => void, other: () => void): [Times, Times] {
  const clock = (job: () => void): number => {
    const begin = performance.now();
    job();
    return performance.now() - begin;
  };
  for (let i = 0; i < 5; i++) {
    one();
    other();
  }
  const samples: [number[], number[]] = [[], []];
  const end = performance.now() + PATIENCE;
  while (performance.now() < end) {
    samples[0].push(clock(one));
    samples[1].push(clock(other));
  }
  return [timesOf(samples[0]), timesOf(samples[1])];
}

function report(title: string, [mine, theirs]: [Times, Times]): void {
  const show = ({ fastest, median }: Times): string =>
    `${fastest.toFixed(4)} (${median.toFixed(4)})`.padStart(20);
  const ratio = (mine.fastest / theirs.fastest).toFixed(3).padStart(8);
  console.log(`${title.padEnd(58)}${show(mine)}${show(theirs)}${ratio}`);
}

function mustConverge({ converged }: { readonly converged: boolean }): void {
  if (!converged) throw new Error('a network was timed that has no answer');
}

async function opened(plain: PlainNetwork): Promise<Epanet> {
  const engine = new Epanet();
  await engine.load();
  engine.open(epanetInput(plain));
  return engine;
}

async function beside(title: string, plain: readonly PlainNetwork[]): Promise<void> {
  const networks = plain.map((each) => ours(each));
  const inputs = plain.map(epanetInput);
  const engine = new Epanet();
  await engine.load();
  const openAndSolve = takeTurns(
    () => {
      for (const network of networks) mustConverge(solveNetwork(network));
    },
    () => {
      for (const input of inputs) {
        engine.open(input);
        engine.solve();
        engine.close();
      }
    },
  );
  report(`${title}: open and solve`, openAndSolve);
  const ready = networks.map((network) => {
    const prepared = prepareNetwork(network);
    if ('reason' in prepared) throw new Error(prepared.reason);
    return prepared;
  });
  const engines = await Promise.all(plain.map(opened));
  const solveOnly = takeTurns(
    () => {
      for (const prepared of ready) mustConverge(solvePrepared(prepared));
    },
    () => {
      for (const each of engines) each.solve();
    },
  );
  report(`${title}: solve only`, solveOnly);
  for (const each of engines) each.close();
}

console.log(
  `${'milliseconds: fastest (median)'.padEnd(58)}${'ours'.padStart(20)}${'EPANET'.padStart(20)}   ratio`,
);
await beside(
  'a run of 12 fittings at 4 speeds',
  [1, 0.8, 0.6, 0.4].map((speed) => seriesRun(12, speed)),
);
await beside('a run of 100 segments', [seriesRun(100)]);
await beside('a tree of 200 nodes with 5 fans', [gatheringTree(200, 5, 3)]);
await beside('a tree of 5,000 segments with 12 fans', [gatheringTree(3700, 12, 4)]);
