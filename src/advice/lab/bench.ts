import { produce } from 'immer';
import type { BendChoice, Job, Node, Segment, UnitSystem, Vec3 } from '../../graph/document.ts';
import { emptyJob } from '../../graph/templates.ts';
import { add, scale } from '../../graph/vector.ts';
import { words } from '../../words/index.ts';

const says = words.lessons.bench;

/** A turn to try bends at: which of a scheme, in which job. */
export interface LabScene {
  readonly job: Job;
  readonly schemeId: string;
  /** The node of the turn. */
  readonly node: string;
}

export interface BenchRun {
  readonly title: string;
  /** Steps from the collar on, m. */
  readonly legs: readonly Vec3[];
  readonly bend: BendChoice;
  readonly cap: string;
}

/** Where the collar of the bench's hood is, m. */
const collar: Vec3 = [0, 0, 1.7];

export const benchScheme = 'bench';

/**
 * An invented kitchen with one run on it, from the invented hood of the templates: nodes `hood`, `turn-1`,
 * `turn-2` … and `cap`; legs `leg-1` …. No house stands around it, so that the run alone decides.
 */
export function benchJob(units: UnitSystem, run: BenchRun): Job {
  return produce(emptyJob(units), (job) => {
    job.title = run.title;
    job.notes = says.notes;
    const hood = job.hoods[0];
    const [scheme] = job.schemes;
    if (!hood || !scheme) throw new Error('a template has a hood and a scheme');
    const nodes: Node[] = [{ id: 'hood', at: collar, role: 'hood', hood: hood.id }];
    const segments: Segment[] = [];
    let at = collar;
    run.legs.forEach((leg, i) => {
      at = add(at, leg);
      const from = nodes.at(-1)?.id ?? 'hood';
      const last = i === run.legs.length - 1;
      const node: Node = last
        ? { id: 'cap', at, role: 'cap', cap: run.cap }
        : { id: `turn-${i + 1}`, at, role: 'turn', bend: run.bend };
      nodes.push(node);
      segments.push({ id: `leg-${i + 1}`, from, to: node.id });
    });
    job.schemes = [
      {
        ...scheme,
        id: benchScheme,
        name: run.title,
        defaults: { ...scheme.defaults, bend: run.bend },
        nodes,
        segments,
      },
    ];
  });
}

/** The lab's own turn: straight up, one bend, and along to a wall cap. Invented. */
export function labScene(units: UnitSystem): LabScene {
  const job = benchJob(units, {
    title: says.oneTurn,
    legs: [
      [0, 0, 1.2],
      [3, 0, 0],
    ],
    bend: { kind: 'smooth', radiusRatio: 1 },
    cap: 'wall-flap',
  });
  return { job, schemeId: benchScheme, node: 'turn-1' };
}

/** Centre line of a run of bends from the collar to the cap, m, however many bends are on it. */
export const RUN_LENGTH = 8.4;

/**
 * The same length of duct with `count` square bends on it, alternately up and along, at even distances.
 *
 * @param count 0 to 6
 */
export function runOfBends(units: UnitSystem, count: number, bend: BendChoice): Job {
  const length = RUN_LENGTH / (count + 1);
  return benchJob(units, {
    title: says.turns(count),
    legs: Array.from({ length: count + 1 }, (_, i) => scale(i % 2 === 0 ? [0, 0, 1] : [1, 0, 0], length)),
    bend,
    cap: 'wall-flap',
  });
}
