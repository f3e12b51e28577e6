import { formatFlow, type System } from '../../units/index.ts';
import { formatMoney } from '../cost/price.ts';
import { goals } from '../goals.ts';
import type { SchemeFigures } from './figures.ts';
import { prefer, type SchemeGoal, type Standing, standingOf } from './standing.ts';

export interface Recommendation {
  /** The scheme to be preferred; null where two stand exactly alike at the top, or nothing delivers air. */
  readonly winner: string | null;
  /** Scheme ids, the preferred one first. */
  readonly order: readonly string[];
  /** One sentence on what could hurt somebody in the first, to be said before any reason; null where nothing does. */
  readonly danger: string | null;
  /** Sentences with numbers: what tells the first from the next, and what to mind. */
  readonly because: readonly string[];
}

/** Which scheme is to be preferred for a goal, and why; see `prefer` for the order of what counts. */
export function recommend(
  schemes: readonly SchemeFigures[],
  goal: SchemeGoal,
  speed: string,
  units: System,
): Recommendation {
  const ranked = schemes
    .map((scheme) => ({ scheme, standing: standingOf(scheme) }))
    .sort((a, b) => prefer(a.standing, b.standing, goal));
  const order = ranked.map(({ scheme }) => scheme.id);
  const [first, second] = ranked;
  if (!first?.standing.delivers)
    return {
      winner: null,
      order,
      danger: null,
      because: ['None of them delivers air yet: finish a route first.'],
    };
  if (second && prefer(first.standing, second.standing, goal) === 0)
    return {
      winner: null,
      order,
      danger: null,
      because: [
        `${first.scheme.name} and ${second.scheme.name} come out alike; choose by what is easier to build.`,
      ],
    };
  const wanted = goals.find(({ id }) => id === goal)?.title.toLowerCase() ?? '';
  const because = second ? reasons(first, second, speed, units) : [];
  return {
    winner: first.scheme.id,
    order,
    danger: dangerOf(first.scheme),
    because: [...because, ...cautions(first, speed, units, wanted)],
  };
}

interface Ranked {
  readonly scheme: SchemeFigures;
  readonly standing: Standing;
}

function reasons(first: Ranked, second: Ranked, speed: string, units: System): string[] {
  const [a, b] = [first.standing, second.standing];
  const other = second.scheme.name;
  if (!b.delivers) return [`${other} delivers no air: ${second.scheme.reason ?? ''}`];
  const words: string[] = [];
  const flow = a.flow - b.flow;
  words.push(
    `It delivers ${formatFlow(a.flow, units)} at ${speed}, ${formatFlow(Math.abs(flow), units)} ${flow >= 0 ? 'more' : 'less'} than ${other}.`,
  );
  if (a.errors !== b.errors)
    words.push(`It has ${a.errors} ${a.errors === 1 ? 'error' : 'errors'} where ${other} has ${b.errors}.`);
  if (a.dangers !== b.dangers)
    words.push(
      `It has ${a.dangers} ${a.dangers === 1 ? 'danger' : 'dangers'} where ${other} has ${b.dangers}.`,
    );
  if (a.sound !== null && b.sound !== null && Math.abs(a.sound - b.sound) >= 1)
    words.push(
      `At the cook it is ${Math.round(Math.abs(a.sound - b.sound))} dB ${a.sound < b.sound ? 'quieter' : 'louder'}, by estimate.`,
    );
  if (Math.abs(a.cost - b.cost) >= 1)
    words.push(
      `Its parts cost ${formatMoney(Math.abs(a.cost - b.cost))} ${a.cost < b.cost ? 'less' : 'more'}, by the price list.`,
    );
  return words;
}

function cautions({ scheme, standing }: Ranked, speed: string, units: System, wanted: string): string[] {
  const words = [`Preferred for: ${wanted}; what is in error or dangerous counts before that.`];
  if (!standing.meets)
    words.push(
      `It does not reach the ${formatFlow(scheme.need, units)} that the cooktop asks for at ${speed}.`,
    );
  return words;
}

/** What could hurt somebody in the scheme that is preferred stands before any reason to prefer it. */
function dangerOf({ findings }: SchemeFigures): string | null {
  const [first, ...more] = findings.filter(({ severity }) => severity === 'danger');
  if (!first) return null;
  const rest = more.length === 0 ? '' : ` Its findings name ${more.length} more of this kind.`;
  return `Danger, to be put right first: ${first.message} ${first.remedy ?? ''}`.trim() + rest;
}
