import { setDuct } from '../../graph/edits/index.ts';
import { INCH } from '../../units/index.ts';
import { benchJob, benchScheme } from '../lab/bench.ts';
import type { Lesson, LessonStep } from './lesson.ts';

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
  title: 'Squeezed duct',
  about: 'A duct smaller than the collar: in one leg, in the whole run, and in one short piece.',
  job: (units) =>
    benchJob(units, {
      title: 'Invented lesson: squeezed duct',
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
      title: 'The run at its right size',
      text: 'One gentle turn, and duct as wide as the collar all the way to the wall.',
      todo: 'Look at the drawing and guess the air that gets out.',
      ask: { of: 'flow', question: 'How much air gets out at the highest speed?' },
      remember: 'Duct of the collar’s size is where every comparison starts.',
      nodes: [],
      segments: all,
    },
    {
      title: 'Squeeze the last leg',
      text: 'A smaller duct was at hand for the last leg, three quarters as wide. It has little more than half the area, so the same air has to go nearly twice as fast there.',
      todo: 'Guess the air with the last leg and its cap squeezed.',
      change: squeeze(6, 'leg-3'),
      ask: { of: 'flow', question: 'How much air gets out now?' },
      remember:
        'Loss goes with the square of the velocity, and the area with the square of the diameter: a little narrower is a lot worse.',
      nodes: ['turn-2', 'cap'],
      segments: ['leg-3'],
    },
    {
      title: 'Squeeze the whole run',
      text: 'Somebody reduces right at the collar and runs the small duct all the way.',
      todo: 'Guess the air with the whole run squeezed.',
      change: squeeze(6, ...all),
      ask: { of: 'flow', question: 'How much air gets out of the small duct?' },
      remember:
        'A duct never goes below the size of the collar: the instructions of hoods say so, and the local code may forbid it.',
      nodes: ['hood'],
      segments: all,
    },
    {
      title: 'How fast it blows',
      text: 'The air that is left goes through the small duct faster than it went through the large one. Fast air hisses, and is heard in the kitchen.',
      todo: 'Narrow the whole run once more, and guess how fast the air now goes where it is fastest.',
      change: squeeze(5, ...all),
      ask: { of: 'velocity', question: 'How fast does the air go where it is fastest?' },
      remember:
        'Less air can still be louder air. When a hood hisses and does not draw, look for the narrow place.',
      nodes: [],
      segments: all,
    },
    {
      title: 'Only one short piece',
      text: 'The run is wide again but for one piece: the first leg was left small because a wide duct would not pass the cabinet.',
      todo: 'Guess the air with the first leg alone left squeezed.',
      change: (job) => {
        const wide = job.hoods[0]?.collar;
        if (wide) setDuct(job, benchScheme, ['leg-2', 'leg-3'], wide);
        squeeze(6, 'leg-1')(job);
      },
      ask: { of: 'flow', question: 'How much air gets past one squeezed leg?' },
      remember:
        'One squeezed place holds back the whole run. A gradual cone softens it; only the full size cures it.',
      nodes: ['hood', 'turn-1'],
      segments: ['leg-1'],
    },
  ],
  range:
    'Friction is that of clean, straight, airtight galvanized duct; grease, dents and leaks are not counted. Changes of size are cones of the usual angle. The velocity is the mean over the section, and the sound is an estimate that ranks routes. Hood and fan are invented: the differences teach, the figures are no promise for a real kitchen.',
};
