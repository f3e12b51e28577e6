import type { SchemeSolution } from '../../graph/solution.ts';
import type { Probe } from './types.ts';

/** The node where the run of a speed's hood ends; undefined where nothing was solved. */
export function endOf(solution: SchemeSolution, speed: number): string | undefined {
  const outcome = solution.speeds[speed]?.outcome;
  const last = outcome?.solved ? outcome.path.at(-1) : undefined;
  return last === undefined ? undefined : solution.route.segments.get(last)?.to;
}

/**
 * What is best measured first, at one speed: the air at the hood and the static pressure at both ends of the run. It
 * lays the loss on the fan and the house, on the duct, or on the cap, and none of it needs a ladder outdoors.
 */
export function askedFirst(solution: SchemeSolution, speed: number): readonly Probe[] {
  const node = endOf(solution, speed);
  return [
    { kind: 'hood air', speed, condition: 'as used' },
    { kind: 'collar static', speed, condition: 'as used' },
    ...(node === undefined
      ? []
      : [{ kind: 'duct static', speed, node, condition: 'as used' } satisfies Probe]),
  ];
}

/** What helps beside it, at one speed: the air at the cap finds leaks, the sound a fan that turns slower. */
export function alsoMeasured(speed: number): readonly Probe[] {
  return [
    { kind: 'cap air', speed, condition: 'as used' },
    { kind: 'sound', speed, condition: 'as used' },
  ];
}
