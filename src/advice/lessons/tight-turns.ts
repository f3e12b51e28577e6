import { setBend } from '../../graph/edits/index.ts';
import { inferRoute } from '../../graph/infer.ts';
import { benchJob, benchScheme } from '../lab/bench.ts';
import { sharedTurn } from '../proposals/two-45s.ts';
import type { Lesson } from './lesson.ts';

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
  title: 'Tight turns',
  about: 'The same duct, the same fan: only the way its three turns are made changes.',
  job: (units) =>
    benchJob(units, {
      title: 'Invented lesson: tight turns',
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
      title: 'Look at the run',
      text: 'A hood blows into a duct of its collar’s size. Three smooth turns, each with a centre-line radius of one and a half diameters, lead to a cap in the wall.',
      todo: 'Look at the drawing and at what the hood is rated to move. Then say how much of that you think gets out.',
      ask: { of: 'flow', question: 'How much air gets out at the highest speed?' },
      remember:
        'The rated airflow is what the fan moves with no duct on it. Every duct takes some of it away; the question is how much.',
      nodes: [],
      segments: ['leg-1', 'leg-2', 'leg-3', 'leg-4'],
    },
    {
      title: 'Tighten the turns',
      text: 'The same three turns, bent to half of one diameter: the inside of the bend is almost a corner. Air cannot follow it, leaves the wall and whirls.',
      todo: 'Say what is left of the air. Then make the turns tight.',
      change: make(...turns.map((node) => bend(node, 'smooth', 0.5))),
      ask: { of: 'flow', question: 'How much air gets out now?' },
      remember:
        'Tightening a bend costs more than shortening the duct can save. The radius of the centre line over the diameter, r/D, tells the most about a bend.',
      nodes: turns,
      segments: [],
    },
    {
      title: 'Cut them square',
      text: 'A mitred corner has no radius at all. It is the quickest to make, and it needs the least room.',
      todo: 'Guess how much straight duct one such corner is worth. Then cut the corners.',
      change: make(...turns.map((node) => bend(node, 'mitred', 0))),
      ask: {
        of: 'equivalentLength',
        node: 'turn-2',
        question: 'One mitred corner costs as much as how much straight duct?',
      },
      remember: 'One square corner can cost as much as all the straight duct of a usual run.',
      nodes: turns,
      segments: [],
    },
    {
      title: 'Mend one of three',
      text: 'There is often room for one gentle turn only. The loss of the others stays.',
      todo: 'Guess the air with the first turn gentle again and the two others still square.',
      change: make(bend('turn-1', 'smooth', 1.5)),
      ask: { of: 'flow', question: 'How much air gets out with one turn mended?' },
      remember:
        'Each bend takes its own part, so each one mended gives its own part back. Begin with the worst, not with the easiest.',
      nodes: ['turn-1'],
      segments: [],
    },
    {
      title: 'Two shallow turns for one',
      text: 'Where a square corner stands, two bends of 45° with a short leg between them often fit: the corner is cut off.',
      todo: 'Guess the air with the second corner shared between two smooth 45° bends.',
      change: (job) => {
        make(bend('turn-2', 'smooth', 1))(job);
        const node = inferRoute(job, benchScheme).nodes.get('turn-2');
        const { segments } = inferRoute(job, benchScheme);
        const [up, down] = [node?.bend?.upstream, node?.bend?.downstream].map((id) => segments.get(id ?? ''));
        if (node && up && down) sharedTurn(benchScheme, node, up, down).recipe(job);
      },
      ask: { of: 'flow', question: 'How much air gets out with the corner cut off?' },
      remember:
        'Two 45s are the remedy for a square corner where a long radius does not fit. In place of a bend that is gentle already they bring nothing: half the angle has more than half the loss.',
      nodes: ['turn-2'],
      segments: [],
    },
  ],
  range:
    'Each bend is counted with its own tabled loss, as if straight duct stood before and after it. Bends closer together than a few diameters disturb one another, and may cost more or less than their sum. Slip joints, beads and dents are not counted. Hood, fan and house are invented: the differences teach, the figures are no promise for a real kitchen.',
};
