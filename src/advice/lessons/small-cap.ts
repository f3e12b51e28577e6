import { setCap, setCapOpening, setDuct } from '../../graph/edits/index.ts';
import { area } from '../../hydraulics/section.ts';
import { INCH } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { benchJob, benchScheme } from '../lab/bench.ts';
import type { Lesson } from './lesson.ts';

const says = words.lessons.smallCap;

/** The free opening of the cap that hardly opens, as a part of the collar's area. */
const STUCK = 0.35;

/** What the last part of the run does, where nobody looks. */
export const smallCap: Lesson = {
  id: 'small-cap',
  title: says.title,
  about: says.about,
  job: (units) =>
    benchJob(units, {
      title: says.job,
      legs: [
        [0, 0, 1],
        [3, 0, 0],
      ],
      bend: { kind: 'smooth', radiusRatio: 1.5 },
      cap: 'wall-flap',
    }),
  steps: [
    {
      title: says.fair,
      text: says.fairTold,
      todo: says.fairTask,
      ask: { of: 'flow', question: says.fairAsk },
      remember: says.fairPoint,
      nodes: ['cap'],
      segments: [],
    },
    {
      title: says.small,
      text: says.smallTold,
      todo: says.smallTask,
      change: (job) => void setCap(job, benchScheme, 'cap', 'wall-flap-small'),
      ask: { of: 'flow', question: says.smallAsk },
      remember: says.smallPoint,
      nodes: ['cap'],
      segments: [],
    },
    {
      title: says.worth,
      text: says.worthTold,
      todo: says.worthTask,
      ask: {
        of: 'equivalentLength',
        node: 'cap',
        question: says.worthAsk,
      },
      remember: says.worthPoint,
      nodes: ['cap'],
      segments: [],
    },
    {
      title: says.wide,
      text: says.wideTold,
      todo: says.wideTask,
      change: (job) => {
        const { diameter } = collarOf(job);
        setCapOpening(job, benchScheme, 'cap', 0.7074 * area({ shape: 'round', diameter }));
        setDuct(job, benchScheme, ['leg-1', 'leg-2'], { shape: 'round', diameter: diameter + 2 * INCH });
      },
      ask: { of: 'flow', question: says.wideAsk },
      remember: says.widePoint,
      nodes: ['cap'],
      segments: ['leg-1', 'leg-2'],
    },
    {
      title: says.stuck,
      text: says.stuckTold,
      todo: says.stuckTask,
      change: (job) => {
        const collar = collarOf(job);
        setDuct(job, benchScheme, ['leg-1', 'leg-2'], collar);
        setCapOpening(job, benchScheme, 'cap', STUCK * area(collar));
      },
      ask: { of: 'flow', question: says.stuckAsk },
      remember: says.stuckPoint,
      nodes: ['cap'],
      segments: [],
    },
    {
      title: says.cure,
      text: says.cureTold,
      todo: says.cureTask,
      change: (job) => {
        setCapOpening(job, benchScheme, 'cap', null);
        setCap(job, benchScheme, 'cap', 'wall-flap');
      },
      ask: { of: 'flow', question: says.cureAsk },
      remember: says.curePoint,
      nodes: ['cap'],
      segments: [],
    },
  ],
  range: says.limits,
};

function collarOf(job: { readonly hoods: readonly { readonly collar: unknown }[] }): {
  readonly shape: 'round';
  readonly diameter: number;
} {
  const collar = job.hoods[0]?.collar as { shape: 'round'; diameter: number } | undefined;
  if (collar?.shape !== 'round') throw new Error('the invented hood has a round collar');
  return { shape: 'round', diameter: collar.diameter };
}
