import { useEffect } from 'react';
import { longestCombined } from '../../advice/combinations/search.ts';
import { pricesAreInvented } from '../../advice/cost/price.ts';
import { turnsLookedAt } from '../../advice/proposals.ts';
import { useAdvice, useApp, useBoard } from '../context.ts';
import { ChangeCard } from '../proposals/ChangeCard.tsx';
import { BestTogether, OtherCombinations } from '../proposals/Combinations.tsx';
import { GoalChooser } from '../proposals/GoalChooser.tsx';

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
          ? 'Computing…'
          : forAir.length === 0
            ? 'Nothing on the list lets noticeably more air out. This route is about as good as its fan allows.'
            : `Air gained at ${advice.speed ?? 'the top speed'}. Point at one to see it on the sheets; press to do it.`}
      </p>
      <LongRun />
      {!advice.computing && <BestTogether />}
      {forAir.length > 0 && (
        <section>
          <h2>One change at a time</h2>
          <ol className="proposal-list" aria-label="One change at a time">
            {forAir.map((proposal) => (
              <ChangeCard key={proposal.id} kind={proposal.kind} change={proposal} most={most} />
            ))}
          </ol>
        </section>
      )}
      {!advice.computing && <OtherCombinations />}
      {remedies.length > 0 && (
        <section>
          <h2>For the house and the duct</h2>
          <ol className="proposal-list" aria-label="For the house and the duct">
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
  const alone = route.segments.size > longestCombined ? ', one at a time' : '';
  return (
    <p className="lead">
      A long run: of its {turns} turns the {tried} whose bends cost most were tried{alone}.
    </p>
  );
}

function HowToStart({ begun }: { begun: boolean }) {
  const reason = useBoard((state) => {
    const outcome = state.solution.speeds[state.speed]?.outcome;
    return outcome && !outcome.solved ? outcome.reason : null;
  });
  return (
    <div className="empty-state">
      <h2>{begun ? 'Finish the route' : 'Draw a route'}</h2>
      {begun && reason && <p>{reason}</p>}
      <ol>
        <li>
          Pick the <strong>hood</strong> tool (H) and click on the floor sheet.
        </li>
        <li>
          Pick the <strong>duct</strong> tool (D), click on the hood and then at each turn. Type a number for
          an exact length.
        </li>
        <li>
          Work on the <strong>section</strong> sheet for what rises.
        </li>
        <li>
          Pick the <strong>cap</strong> tool (C) and click on the end that is outdoors.
        </li>
      </ol>
      <p>As soon as the duct reaches a cap, the air at each speed and what would improve it stand here.</p>
    </div>
  );
}
