import type { Job } from '../../graph/document.ts';
import type { SchemeSolution } from '../../graph/solution.ts';
import { patient } from './observe.ts';
import { type Fault, type Measurement, type Probe, spread } from './types.ts';

/** A measurement not yet taken, with what each of two causes would make it read. */
export interface Decider {
  readonly probe: Probe;
  /** The two that it tells apart; null for nothing wrong. */
  readonly between: readonly [Fault | null, Fault | null];
  readonly first: number;
  readonly second: number;
  /** Difference in standard deviations of the measurement. */
  readonly apart: number;
}

/** Below this many standard deviations no one measurement decides. */
const DECIDES = 2;

/** Every measurement that could still be taken, the easier ones first. */
function open(solution: SchemeSolution, path: readonly string[], measured: readonly Measurement[]): Probe[] {
  const last = solution.speeds.length - 1;
  const speeds = last > 0 ? [last, 0] : [last];
  const nodes = path.slice(1).flatMap((id) => solution.route.segments.get(id)?.from ?? []);
  const end = solution.route.segments.get(path.at(-1) ?? '')?.to;
  const probes = speeds.flatMap((speed): Probe[] => [
    { kind: 'hood air', speed, condition: 'as used' },
    { kind: 'cap air', speed, condition: 'as used' },
    { kind: 'collar static', speed, condition: 'as used' },
    { kind: 'hood air', speed, condition: 'window open' },
    { kind: 'hood air', speed, condition: 'filters out' },
    { kind: 'house pressure', speed, condition: 'as used' },
    ...[...nodes, ...(end === undefined ? [] : [end])].map(
      (node): Probe => ({ kind: 'duct static', speed, node, condition: 'as used' }),
    ),
  ]);
  return probes.filter((probe) => !measured.some((one) => sameProbe(one, probe)));
}

export function sameProbe(a: Probe, b: Probe): boolean {
  return a.kind === b.kind && a.speed === b.speed && a.node === b.node && a.condition === b.condition;
}

/**
 * The measurement not yet taken whose predicted readings differ most between two causes, in its own standard
 * deviations; null where none of them differs by two. Among equals the easier one.
 */
export function decider(
  job: Job,
  solution: SchemeSolution,
  path: readonly string[],
  measured: readonly Measurement[],
  one: Fault | null,
  other: Fault | null,
): Decider | null {
  const [a, b] = [patient(job, solution.schemeId, one), patient(job, solution.schemeId, other)];
  let best: Decider | null = null;
  for (const probe of open(solution, path, measured)) {
    const [first, second] = [a.observe(probe), b.observe(probe)];
    if (first === undefined || second === undefined) continue;
    const apart = Math.abs(first - second) / Math.max(spread(probe.kind, first), spread(probe.kind, second));
    if (apart > 1.1 * (best?.apart ?? 0)) best = { probe, between: [one, other], first, second, apart };
  }
  return best && best.apart >= DECIDES ? best : null;
}
