import { setBend } from '../../graph/edits/index.ts';
import { inferRoute } from '../../graph/infer.ts';
import { words } from '../../words/index.ts';
import { benchJob, benchScheme } from '../lab/bench.ts';
import { sharedTurn } from '../proposals/two-45s.ts';
import type { Lesson } from './lesson.ts';

const says = words.lessons.tightTurns;

const bend = (node: string, kind: string, radiusRatio: number) => ({ node, choice: { kind, radiusRatio } });

type BendAt = ReturnType<typeof bend>;

const make =
  (...bends: readonly BendAt[]): NonNullable<Lesson['steps'][number]['change']> =>
  (job) => {
    for (const { node, choice } of bends) setBend(job, benchScheme, node, choice);
  };

const turns = ['turn-1', 'turn-2', 'turn-3'];

/** What the radius of a turn does to the air. */
export const tightTurns: Lesson = {
  id: 'tight-turns',
  title: says.title,
  about: says.about,
  job: (units) =>
    benchJob(units, {
      title: says.job,
      legs: [
        [0, 0, 1.1],
        [2.2, 0, 0],
        [0, 0, 1.3],
        [1.2, 0, 0],
      ],
      bend: { kind: 'smooth', radiusRatio: 1.5 },
      cap: 'wall-flap',
    }),
  steps: [
    {
      title: says.look,
      text: says.lookTold,
      todo: says.lookTask,
      ask: { of: 'flow', question: says.lookAsk },
      remember: says.lookPoint,
      nodes: [],
      segments: ['leg-1', 'leg-2', 'leg-3', 'leg-4'],
    },
    {
      title: says.tighten,
      text: says.tightenTold,
      todo: says.tightenTask,
      change: make(...turns.map((node) => bend(node, 'smooth', 0.5))),
      ask: { of: 'flow', question: says.tightenAsk },
      remember: says.tightenPoint,
      nodes: turns,
      segments: [],
    },
    {
      title: says.square,
      text: says.squareTold,
      todo: says.squareTask,
      change: make(...turns.map((node) => bend(node, 'mitred', 0))),
      ask: {
        of: 'equivalentLength',
        node: 'turn-2',
        question: says.squareAsk,
      },
      remember: says.squarePoint,
      nodes: turns,
      segments: [],
    },
    {
      title: says.mend,
      text: says.mendTold,
      todo: says.mendTask,
      change: make(bend('turn-1', 'smooth', 1.5)),
      ask: { of: 'flow', question: says.mendAsk },
      remember: says.mendPoint,
      nodes: ['turn-1'],
      segments: [],
    },
    {
      title: says.share,
      text: says.shareTold,
      todo: says.shareTask,
      change: (job) => {
        make(bend('turn-2', 'smooth', 1))(job);
        const node = inferRoute(job, benchScheme).nodes.get('turn-2');
        const { segments } = inferRoute(job, benchScheme);
        const [up, down] = [node?.bend?.upstream, node?.bend?.downstream].map((id) => segments.get(id ?? ''));
        if (node && up && down) sharedTurn(benchScheme, node, up, down).recipe(job);
      },
      ask: { of: 'flow', question: says.shareAsk },
      remember: says.sharePoint,
      nodes: ['turn-2'],
      segments: [],
    },
  ],
  range: says.limits,
};
