import { formatFlow, formatNumber, type System } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { formatMoney } from '../cost/price.ts';
import { goals } from '../goals.ts';
import type { SchemeFigures } from './figures.ts';
import { prefer, type SchemeGoal, type Standing, standingOf } from './standing.ts';

const says = words.compare.recommend;

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
      because: [says.noneDelivers],
    };
  if (second && prefer(first.standing, second.standing, goal) === 0)
    return {
      winner: null,
      order,
      danger: null,
      because: [says.alike(first.scheme.name, second.scheme.name)],
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
  if (!b.delivers) return [says.deliversNone(other, second.scheme.reason ?? '')];
  const words: string[] = [];
  const flow = a.flow - b.flow;
  words.push(
    (flow >= 0 ? says.more : says.less)(
      formatFlow(a.flow, units),
      speed,
      formatFlow(Math.abs(flow), units),
      other,
    ),
  );
  if (a.errors !== b.errors) words.push(says.errors(a.errors, other, b.errors));
  if (a.dangers !== b.dangers) words.push(says.dangers(a.dangers, other, b.dangers));
  if (a.sound !== null && b.sound !== null && Math.abs(a.sound - b.sound) >= 1)
    words.push(
      (a.sound < b.sound ? says.quieter : says.louder)(formatNumber(Math.abs(a.sound - b.sound), 0)),
    );
  if (Math.abs(a.cost - b.cost) >= 1)
    words.push((a.cost < b.cost ? says.cheaper : says.dearer)(formatMoney(Math.abs(a.cost - b.cost))));
  return words;
}

function cautions({ scheme, standing }: Ranked, speed: string, units: System, wanted: string): string[] {
  const words = [says.preferred(wanted)];
  if (!standing.meets) words.push(says.doesNotReach(formatFlow(scheme.need, units), speed));
  return words;
}

/** What could hurt somebody in the scheme that is preferred stands before any reason to prefer it. */
function dangerOf({ findings }: SchemeFigures): string | null {
  const [first, ...more] = findings.filter(({ severity }) => severity === 'danger');
  if (!first) return null;
  const rest = more.length === 0 ? '' : ` ${says.moreDangers(more.length)}`;
  return says.danger(first.message, first.remedy ?? '').trim() + rest;
}
