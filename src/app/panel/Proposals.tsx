import { produce } from 'immer';
import { useEffect } from 'react';
import { Button } from 'react-aria-components';
import type { Proposal } from '../../advice/proposals.ts';
import { formatFlow } from '../../units/index.ts';
import { useAdvice, useApp, useBoard } from '../context.ts';
import { gained } from '../wording.ts';

/** Changes that let more air out, the best first; each was solved, none is a guess. */
export function Proposals() {
  const { board } = useApp();
  const advice = useAdvice();
  const begun = useBoard((state) => state.solution.route.segments.size > 0);
  const solved = useBoard((state) => state.solution.speeds.some((speed) => speed.outcome.solved));
  useEffect(() => () => board.set({ ghost: null }), [board]);

  if (!solved) return <HowToStart begun={begun} />;
  return (
    <div className="proposals" aria-busy={advice.computing}>
      <p className="lead">
        {advice.computing
          ? 'Computing…'
          : advice.proposals.length === 0
            ? 'Nothing on the list lets noticeably more air out. This route is about as good as its fan allows.'
            : `Air gained at ${advice.speed ?? 'the top speed'}. Point at one to see it on the sheets; press to do it.`}
      </p>
      <ol className="proposal-list" onPointerLeave={() => board.set({ ghost: null })}>
        {advice.proposals.map((proposal, index) => (
          <Row key={proposal.id} proposal={proposal} best={advice.proposals[0]} first={index === 0} />
        ))}
      </ol>
    </div>
  );
}

function Row({ proposal, best, first }: { proposal: Proposal; best: Proposal | undefined; first: boolean }) {
  const { board } = useApp();
  const units = useBoard((state) => state.units);
  const { computing } = useAdvice();
  const speed = useBoard((state) => state.solution.speeds[state.speed]?.name);
  const at = proposal.gains.find((gain) => gain.speed === speed) ?? proposal.gains.at(-1);
  const show = () =>
    board.set({
      ghost: {
        job: produce(board.getState().job, proposal.recipe),
        solution: proposal.solution,
      },
      hover: { nodes: proposal.nodes, segments: proposal.segments },
    });
  const hide = () => board.set({ ghost: null, hover: { nodes: [], segments: [] } });
  return (
    <li>
      <Button
        className="proposal"
        data-proposal={proposal.kind}
        isDisabled={computing}
        onHoverStart={show}
        onHoverEnd={hide}
        onFocus={show}
        onBlur={hide}
        onPress={() => {
          hide();
          board.dispatch(proposal.label, proposal.recipe);
        }}
      >
        <span className="proposal-head">
          <span className="proposal-title">{proposal.title}</span>
          <span className="gain">{gained(proposal.gain, units)}</span>
        </span>
        <span className="bar thin" aria-hidden="true">
          <span style={{ width: `${best && best.gain > 0 ? (100 * proposal.gain) / best.gain : 0}%` }} />
        </span>
        <span className="proposal-reason">{proposal.reason}</span>
        {at && (
          <span className="proposal-reason">
            {formatFlow(at.before, units)} → {formatFlow(at.after, units)}
            {first ? ' · helps most' : ''}
          </span>
        )}
      </Button>
    </li>
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
