import { formatFlow, formatLength } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { type Check, type Said, worst } from './types.ts';

const says = words.rules.kitchen;

/** The air of each hood at its highest speed. */
export const leastAir: Check = ({ job, runs }, _rule, limit) => {
  const least = typeof limit === 'number' ? limit : 0;
  return worst(
    runs.map(({ hood, node, solved }): Said => {
      const top = Math.max(0, ...solved.map(({ flow }) => flow));
      if (solved.length === 0)
        return { state: 'cannot tell', message: says.unsolved(hood.name), nodes: [node] };
      const measured = formatFlow(top, job.units);
      return {
        state: top < least * (1 - 1e-9) ? 'fails' : 'meets',
        message: says.moves(hood.name, measured, formatFlow(least, job.units)),
        measured,
        nodes: [node],
      };
    }),
    says.noHood,
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
          message: cooktop ? says.noHoodWidth : says.noCooktopWidth,
          remedy: says.enterIt,
          nodes: [node],
        };
      const over = (hood.width - cooktop.width) / 2;
      const fails = over < least - 1e-6;
      const measured = formatLength(Math.abs(over), job.units);
      const reaches = over < -1e-6 ? says.fallsShort : says.reaches;
      return {
        state: fails ? 'fails' : 'meets',
        message: reaches(hood.name, measured, formatLength(least, job.units)),
        measured: over < -1e-6 ? says.short(measured) : measured,
        nodes: [node],
      };
    }),
    says.noHood,
  );
};

const mounting =
  (
    broken: (height: number, limit: number) => boolean,
    say: (height: string, advised: string) => string,
  ): Check =>
  ({ job, runs }, _rule, limit) => {
    const height = job.kitchen.mountingHeight;
    const nodes = runs.map((run) => run.node);
    if (height === undefined)
      return {
        state: 'cannot tell',
        message: says.noHeight,
        remedy: says.enterIt,
        nodes,
      };
    const bound = typeof limit === 'number' ? limit : 0;
    const measured = formatLength(height, job.units);
    return {
      state: broken(height, bound) ? 'fails' : 'meets',
      message: say(measured, formatLength(bound, job.units)),
      measured,
      nodes,
    };
  };

export const mountingLeast = mounting((height, limit) => height < limit - 1e-6, says.hangsLeast);
export const mountingMost = mounting((height, limit) => height > limit + 1e-6, says.hangsMost);
