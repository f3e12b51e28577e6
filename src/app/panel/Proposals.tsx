import { useEffect } from 'react';
import { longestCombined } from '../../advice/combinations/search.ts';
import { pricesAreInvented } from '../../advice/cost/price.ts';
import { turnsLookedAt } from '../../advice/proposals.ts';
import type { BoardState } from '../../canvas/board.ts';
import { schemeOf } from '../../graph/infer.ts';
import { words } from '../../words/index.ts';
import { useAdvice, useApp, useBoard } from '../context.ts';
import { Marked } from '../Marked.tsx';
import { ChangeCard } from '../proposals/ChangeCard.tsx';
import { BestTogether, OtherCombinations } from '../proposals/Combinations.tsx';
import { GoalChooser } from '../proposals/GoalChooser.tsx';

const says = words.proposals.list;

/** Changes that make the route better, the best for the goal first; each was solved, none is a guess. */
export function Proposals() {
  const { board } = useApp();
  const advice = useAdvice();
  const begun = useBoard((state) => state.solution.route.segments.size > 0);
  const solved = useBoard((state) => state.solution.speeds.some((speed) => speed.outcome.solved));
  useEffect(() => () => board.set({ ghost: null }), [board]);

  if (!solved) return <HowToStart begun={begun} />;
  const forAir = advice.proposals.filter(({ remedy }) => !remedy);
  const remedies = advice.proposals.filter(({ remedy }) => remedy);
  const most = Math.max(...advice.proposals.map(({ gain }) => gain), 0);
  return (
    <div className="proposals" aria-busy={advice.computing} onPointerLeave={() => board.set({ ghost: null })}>
      <GoalChooser />
      <p className="lead">
        {advice.computing
          ? says.computing
          : forAir.length === 0
            ? says.none
            : says.lead(advice.speed ?? says.topSpeed)}
      </p>
      <LongRun />
      {!advice.computing && <BestTogether />}
      {forAir.length > 0 && (
        <section>
          <h2>{says.oneAtATime}</h2>
          <ol className="proposal-list" aria-label={says.oneAtATime}>
            {forAir.map((proposal) => (
              <ChangeCard key={proposal.id} kind={proposal.kind} change={proposal} most={most} />
            ))}
          </ol>
        </section>
      )}
      {!advice.computing && <OtherCombinations />}
      {remedies.length > 0 && (
        <section>
          <h2>{says.remedies}</h2>
          <ol className="proposal-list" aria-label={says.remedies}>
            {remedies.map((proposal) => (
              <ChangeCard key={proposal.id} kind={proposal.kind} change={proposal} most={most} remedy />
            ))}
          </ol>
        </section>
      )}
      <p className="lead">{pricesAreInvented}</p>
    </div>
  );
}

/** What was left out, where a run is too long for everything to be tried. */
function LongRun() {
  const route = useBoard((state) => state.solution.route);
  const turns = [...route.nodes.values()].filter(({ bend }) => bend).length;
  const tried = turnsLookedAt(route.segments.size);
  if (turns <= tried) return null;
  return (
    <p className="lead">
      {(route.segments.size > longestCombined ? says.longRunAlone : says.longRun)(turns, tried)}
    </p>
  );
}

/** From an empty sheet to a route that is solved. */
const steps = ['hood', 'duct', 'section', 'cap'] as const;

function HowToStart({ begun }: { begun: boolean }) {
  const says = words.proposals.start;
  const roles = useBoard((state) => rolesOf(state));
  const hood = roles.includes('hood');
  const done = steps.filter(
    (step) =>
      (step === 'hood' && hood) || (step === 'duct' && begun) || (step === 'cap' && roles.includes('cap')),
  );
  const now = !hood ? 'hood' : !begun ? 'duct' : 'cap';
  const reason = useBoard((state) => {
    const outcome = state.solution.speeds[state.speed]?.outcome;
    return outcome && !outcome.solved ? outcome.reason : null;
  });
  return (
    <div className="empty-state">
      <h2>{begun ? says.finish : says.draw}</h2>
      {begun && reason && <p>{reason}</p>}
      <ol className="start-steps">
        {steps.map((step) => (
          <li
            key={step}
            data-done={done.includes(step) || undefined}
            aria-current={step === now ? 'step' : undefined}
          >
            <span>
              <Marked text={says[step]} />
              {done.includes(step) && <span className="unseen"> {says.done}</span>}
            </span>
          </li>
        ))}
      </ol>
      <p>{says.reached}</p>
    </div>
  );
}

/** The roles of the scheme's nodes, told apart by a comma. */
function rolesOf({ live, schemeId }: BoardState): string {
  return schemeOf(live, schemeId)
    .nodes.map(({ role }) => role)
    .join();
}
