import { formatFlow, formatLength } from '../../units/index.ts';
import { type Check, type Said, worst } from './types.ts';

/** The air of each hood at its highest speed. */
export const leastAir: Check = ({ job, runs }, _rule, limit) => {
  const least = typeof limit === 'number' ? limit : 0;
  return worst(
    runs.map(({ hood, node, solved }): Said => {
      const top = Math.max(0, ...solved.map(({ flow }) => flow));
      if (solved.length === 0)
        return { state: 'cannot tell', message: `What ${hood.name} moves is not solved.`, nodes: [node] };
      const measured = formatFlow(top, job.units);
      return {
        state: top < least * (1 - 1e-9) ? 'fails' : 'meets',
        message: `${hood.name} moves ${measured} at most; the least is ${formatFlow(least, job.units)}.`,
        measured,
        nodes: [node],
      };
    }),
    'No hood stands on the sheets yet.',
  );
};

/** How far each hood reaches over the cooktop on each side. */
export const overhang: Check = ({ job, runs }, _rule, limit) => {
  const least = typeof limit === 'number' ? limit : 0;
  const { cooktop } = job.kitchen;
  return worst(
    runs.map(({ hood, node }): Said => {
      if (!cooktop || hood.width === undefined)
        return {
          state: 'cannot tell',
          message: `The width of ${cooktop ? 'the hood' : 'the cooktop'} is not entered.`,
          remedy: 'Enter it in the Kitchen tab.',
          nodes: [node],
        };
      const over = (hood.width - cooktop.width) / 2;
      const fails = over < least - 1e-6;
      const measured = formatLength(Math.abs(over), job.units);
      const reaches = over < -1e-6 ? `falls ${measured} short of` : `reaches ${measured} beyond`;
      return {
        state: fails ? 'fails' : 'meets',
        message: `${hood.name} ${reaches} the cooktop on each side; ${formatLength(least, job.units)} is advised.`,
        measured: over < -1e-6 ? `−${measured}` : measured,
        nodes: [node],
      };
    }),
    'No hood stands on the sheets yet.',
  );
};

const mounting =
  (broken: (height: number, limit: number) => boolean, words: string): Check =>
  ({ job, runs }, _rule, limit) => {
    const height = job.kitchen.mountingHeight;
    const nodes = runs.map((run) => run.node);
    if (height === undefined)
      return {
        state: 'cannot tell',
        message: 'The height of the hood above the cooktop is not entered.',
        remedy: 'Enter it in the Kitchen tab.',
        nodes,
      };
    const bound = typeof limit === 'number' ? limit : 0;
    const measured = formatLength(height, job.units);
    return {
      state: broken(height, bound) ? 'fails' : 'meets',
      message: `The hood hangs ${measured} above the cooktop; ${words} ${formatLength(bound, job.units)} is advised, and the hood's instructions decide.`,
      measured,
      nodes,
    };
  };

export const mountingLeast = mounting((height, limit) => height < limit - 1e-6, 'at least');
export const mountingMost = mounting((height, limit) => height > limit + 1e-6, 'at most');
