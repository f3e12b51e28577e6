import { setDuct } from '../../graph/edits/index.ts';
import { INCH } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { benchJob, benchScheme } from '../lab/bench.ts';
import type { Lesson, LessonStep } from './lesson.ts';

const says = words.lessons.squeezedDuct;

const squeeze =
  (inches: number, ...legs: readonly string[]): NonNullable<LessonStep['change']> =>
  (job) => {
    const metric = job.units === 'metric';
    const diameter = metric ? Math.round(inches * 25) / 1000 : inches * INCH;
    setDuct(job, benchScheme, legs, { shape: 'round', diameter });
  };

const all = ['leg-1', 'leg-2', 'leg-3'];

/** What a smaller diameter does, in a part of the run and in all of it. */
export const squeezedDuct: Lesson = {
  id: 'squeezed-duct',
  title: says.title,
  about: says.about,
  job: (units) =>
    benchJob(units, {
      title: says.job,
      legs: [
        [0, 0, 1],
        [2.5, 0, 0],
        [2, 0, 0],
      ],
      bend: { kind: 'smooth', radiusRatio: 1.5 },
      cap: 'wall-flap',
    }),
  steps: [
    {
      title: says.right,
      text: says.rightTold,
      todo: says.rightTask,
      ask: { of: 'flow', question: says.rightAsk },
      remember: says.rightPoint,
      nodes: [],
      segments: all,
    },
    {
      title: says.lastLeg,
      text: says.lastLegTold,
      todo: says.lastLegTask,
      change: squeeze(6, 'leg-3'),
      ask: { of: 'flow', question: says.lastLegAsk },
      remember: says.lastLegPoint,
      nodes: ['turn-2', 'cap'],
      segments: ['leg-3'],
    },
    {
      title: says.whole,
      text: says.wholeTold,
      todo: says.wholeTask,
      change: squeeze(6, ...all),
      ask: { of: 'flow', question: says.wholeAsk },
      remember: says.wholePoint,
      nodes: ['hood'],
      segments: all,
    },
    {
      title: says.fast,
      text: says.fastTold,
      todo: says.fastTask,
      change: squeeze(5, ...all),
      ask: { of: 'velocity', question: says.fastAsk },
      remember: says.fastPoint,
      nodes: [],
      segments: all,
    },
    {
      title: says.short,
      text: says.shortTold,
      todo: says.shortTask,
      change: (job) => {
        const wide = job.hoods[0]?.collar;
        if (wide) setDuct(job, benchScheme, ['leg-2', 'leg-3'], wide);
        squeeze(6, 'leg-1')(job);
      },
      ask: { of: 'flow', question: says.shortAsk },
      remember: says.shortPoint,
      nodes: ['hood', 'turn-1'],
      segments: ['leg-1'],
    },
  ],
  range: says.limits,
};
