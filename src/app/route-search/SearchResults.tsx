import { produce } from 'immer';
import { useEffect, useMemo, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import type { FoundRoute, RouteSearch } from '../../advice/route-search/find.ts';
import type { RouteQuestion } from '../../advice/route-search/question.ts';
import { drawRoute } from '../../advice/route-search/scheme.ts';
import type { Ghost } from '../../canvas/board.ts';
import type { Job, UnitSystem } from '../../graph/document.ts';
import { solveScheme } from '../../graph/solve.ts';
import { distance } from '../../graph/vector.ts';
import { formatFlow, formatLength, formatRun } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useApp, useBoard } from '../context.ts';
import { capitalized, gained } from '../wording.ts';

const says = words.routeSearch.results;

interface SearchResultsProps {
  readonly question: RouteQuestion;
  readonly search: RouteSearch;
}

/** The routes that were found, the one looked at drawn as a ghost over the sheets. */
export function SearchResults({ question, search }: SearchResultsProps) {
  const { board } = useApp();
  const job = useBoard((state) => state.job);
  const [chosen, setChosen] = useState(0);
  const [pointed, setPointed] = useState<number | null>(null);
  const [made, setMade] = useState<ReadonlyMap<FoundRoute, string>>(new Map());
  const isScheme = (found: FoundRoute) => job.schemes.some(({ id }) => id === made.get(found));
  const there = stillThere(job, question, search);
  const looked = search.routes[pointed ?? chosen];
  const route = looked && there && !isScheme(looked) ? looked : null;
  const ghost = useMemo(() => (route ? ghostOf(job, question, route) : null), [job, question, route]);
  const list = useRef<HTMLOListElement>(null);
  useEffect(() => void list.current?.scrollIntoView({ block: 'nearest' }), []);
  useEffect(() => {
    board.set({ ghost });
    return () => board.set({ ghost: null });
  }, [board, ghost]);

  return (
    <ol ref={list} className="route-list" aria-label={says.label} onPointerLeave={() => setPointed(null)}>
      {search.routes.map((found, index) => (
        <Row
          key={found.points.join()}
          route={found}
          shown={index === chosen}
          looked={index === (pointed ?? chosen)}
          canDraw={there}
          isScheme={isScheme(found)}
          beside={question.schemeId}
          onPoint={() => setPointed(index)}
          onChoose={() => {
            setChosen(index);
            setPointed(null);
          }}
          onDraw={() => {
            let id = '';
            board.dispatch(words.edits.scheme.foundRoute, (draft) => {
              id = drawRoute(draft, question, found);
            });
            board.set({ schemeId: id });
            setMade(new Map([...made, [found, id]]));
            setPointed(null);
          }}
        />
      ))}
    </ol>
  );
}

interface RowProps {
  readonly route: FoundRoute;
  readonly shown: boolean;
  /** Its ghost is on the sheets. */
  readonly looked: boolean;
  readonly canDraw: boolean;
  /** Whether it was made a scheme, and still is one. */
  readonly isScheme: boolean;
  /** The scheme that was searched from. */
  readonly beside: string;
  readonly onPoint: () => void;
  readonly onChoose: () => void;
  readonly onDraw: () => void;
}

function Row({ route, shown, looked, canDraw, isScheme, beside, onPoint, onChoose, onDraw }: RowProps) {
  const units = useBoard((state) => state.units);
  const exit = useBoard((state) => state.job.exits.find(({ id }) => id === route.exit));
  const speed = useBoard((state) => state.solution.speeds[state.speed]?.name);
  const at = route.air.find((each) => each.speed === speed) ?? route.air.at(-1);
  const drawn = useBoard(({ schemeId, solution }) => {
    const outcome = solution.speeds.find(({ name }) => name === at?.speed)?.outcome;
    return schemeId === beside && outcome?.solved ? outcome.flow : null;
  });
  return (
    // Only a pointer that moves points: a row that comes to lie under one that rests does not show itself.
    <li
      className="route-row"
      data-shown={shown || undefined}
      data-looked={looked || undefined}
      onPointerMove={onPoint}
    >
      <Button className="route-pick" aria-pressed={shown} onFocus={onPoint} onPress={onChoose}>
        <span className="proposal-head">
          <span className="proposal-title">{capitalized(exit?.name.trim() || exit?.kind || 'exit')}</span>
          <span className="gain">{at ? formatFlow(at.flow, units) : '–'}</span>
        </span>
        {at && drawn !== null && (
          <span className="proposal-reason">{says.against(gained(at.flow - drawn, units))}</span>
        )}
        <span className="proposal-reason">
          {says.route(at?.speed ?? '', formatRun(route.length, units), words.counts.turns(route.turns))}
        </span>
        <span className="proposal-reason">{legWords(route, units)}</span>
      </Button>
      {shown && (
        <Button className="button" isDisabled={!canDraw || isScheme} onPress={onDraw}>
          {isScheme ? says.isScheme : says.makeScheme}
        </Button>
      )}
    </li>
  );
}

const { ways } = words.routeSearch;

/** Against and along each axis. */
const waysAlong = [
  [ways.within.west, ways.within.east],
  [ways.within.south, ways.within.north],
  [ways.within.down, ways.within.up],
] as const;

/** "Up 1'-4", north 11'-7"": the legs in the order of the air. */
function legWords({ points }: FoundRoute, units: UnitSystem): string {
  const legs = points.slice(1).map((to, i) => {
    const from = points[i] ?? to;
    const axis = ([0, 1, 2] as const).reduce((most, each) =>
      Math.abs(to[each] - from[each]) > Math.abs(to[most] - from[most]) ? each : most,
    );
    const way = waysAlong[axis][to[axis] > from[axis] ? 1 : 0];
    return `${way}\u00a0${formatLength(distance(from, to), units, { atMost: 1 })}`;
  });
  return legs.join(', ');
}

/** Whether the collar that the routes start from is where it was when they were found. */
function stillThere(job: Job, { schemeId, hood }: RouteQuestion, { routes }: RouteSearch): boolean {
  const node = job.schemes.find(({ id }) => id === schemeId)?.nodes.find(({ id }) => id === hood);
  const start = routes[0]?.points[0];
  return node !== undefined && start !== undefined && distance(node.at, start) < 1e-6;
}

function ghostOf(job: Job, question: RouteQuestion, route: FoundRoute): Ghost {
  let id = '';
  const drawn = produce(job, (draft) => {
    id = drawRoute(draft, question, route);
  });
  return { job: drawn, solution: solveScheme(drawn, id) };
}
