import { setCap, setCapOpening, setDuct } from '../../graph/edits/index.ts';
import { area } from '../../hydraulics/section.ts';
import { INCH } from '../../units/index.ts';
import { benchJob, benchScheme } from '../lab/bench.ts';
import type { Lesson } from './lesson.ts';

/** The free opening of the cap that hardly opens, as a part of the collar's area. */
const STUCK = 0.35;

/** What the last part of the run does, where nobody looks. */
export const smallCap: Lesson = {
  id: 'small-cap',
  title: 'Small cap',
  about: 'A good duct with a poor end: the cap outside, which nobody looks at.',
  job: (units) =>
    benchJob(units, {
      title: 'Invented lesson: small cap',
      legs: [
        [0, 0, 1],
        [3, 0, 0],
      ],
      bend: { kind: 'smooth', radiusRatio: 1.5 },
      cap: 'wall-flap',
    }),
  steps: [
    {
      title: 'A fair cap',
      text: 'A short run with one gentle turn. The cap’s free opening is as large as the duct, and one flap keeps the weather out.',
      todo: 'Look at the drawing and guess the air that gets out.',
      ask: { of: 'flow', question: 'How much air gets out at the highest speed?' },
      remember:
        'Even a fair cap costs: the air has to lift the flap, turn, and leave with all of its velocity.',
      nodes: ['cap'],
      segments: [],
    },
    {
      title: 'The common small one',
      text: 'The cap off the shelf fits over the duct, but its free opening is smaller than the duct it stands on. From the street both look alike.',
      todo: 'Guess the air with the small cap.',
      change: (job) => void setCap(job, benchScheme, 'cap', 'wall-flap-small'),
      ask: { of: 'flow', question: 'How much air gets out through the small cap?' },
      remember: 'Measure the free opening of a cap, not its collar.',
      nodes: ['cap'],
      segments: [],
    },
    {
      title: 'As much as how much duct?',
      text: 'The loss of a cap can be told in lengths of straight duct, as that of a bend can.',
      todo: 'Guess how much straight duct costs as much as this small cap.',
      ask: {
        of: 'equivalentLength',
        node: 'cap',
        question: 'The small cap costs as much as how much straight duct?',
      },
      remember: 'A poor cap can outweigh the whole run behind it. Look outside first.',
      nodes: ['cap'],
      segments: [],
    },
    {
      title: 'A larger duct will not help',
      text: 'Somebody opens the wall and puts in a duct two inches wider, and keeps the very same cap with the very same opening.',
      todo: 'Guess the air with the wide duct and the old cap.',
      change: (job) => {
        const { diameter } = collarOf(job);
        setCapOpening(job, benchScheme, 'cap', 0.7074 * area({ shape: 'round', diameter }));
        setDuct(job, benchScheme, ['leg-1', 'leg-2'], { shape: 'round', diameter: diameter + 2 * INCH });
      },
      ask: { of: 'flow', question: 'How much does the wide duct bring?' },
      remember: 'Work on the part that takes the most, or the work is for nothing.',
      nodes: ['cap'],
      segments: ['leg-1', 'leg-2'],
    },
    {
      title: 'A flap that sticks',
      text: 'The duct has its first size again. Paint, grease or a nest keeps the flap from opening more than about a third.',
      todo: 'Guess the air that gets past the flap that sticks.',
      change: (job) => {
        const collar = collarOf(job);
        setDuct(job, benchScheme, ['leg-1', 'leg-2'], collar);
        setCapOpening(job, benchScheme, 'cap', STUCK * area(collar));
      },
      ask: { of: 'flow', question: 'How much air gets past the stuck flap?' },
      remember: 'A hood that was good once and is weak now: go outside, switch it on, and watch the flap.',
      nodes: ['cap'],
      segments: [],
    },
    {
      title: 'The cure',
      text: 'A new cap with an opening as large as the duct and a flap that moves freely.',
      todo: 'Guess the air with the cap changed. You have met this run before.',
      change: (job) => {
        setCapOpening(job, benchScheme, 'cap', null);
        setCap(job, benchScheme, 'cap', 'wall-flap');
      },
      ask: { of: 'flow', question: 'How much air gets out with the good cap?' },
      remember: 'The cheapest large gain on many houses is done from a ladder, with nothing opened up.',
      nodes: ['cap'],
      segments: [],
    },
  ],
  range:
    'Caps are built up from contraction, flap, turn and exit by general coefficients; a measured figure of the very cap is better where there is one. Wind on the wall is not counted. Working outside on a ladder, near gas vents or wiring, is for those who may; where a fuel-burning appliance shares the house, more air out needs air in. Hood and fan are invented: the differences teach, the figures are no promise for a real kitchen.',
};

function collarOf(job: { readonly hoods: readonly { readonly collar: unknown }[] }): {
  readonly shape: 'round';
  readonly diameter: number;
} {
  const collar = job.hoods[0]?.collar as { shape: 'round'; diameter: number } | undefined;
  if (collar?.shape !== 'round') throw new Error('the invented hood has a round collar');
  return { shape: 'round', diameter: collar.diameter };
}
