import { describe, expect, it, vi } from 'vitest';
import type { Combination } from '../../../src/advice/combinations/search.ts';
import type { Proposal } from '../../../src/advice/proposals.ts';
import { createAdvisor } from '../../../src/app/advisor.ts';
import { createBoard } from '../../../src/app/store.ts';
import { exampleJob, firstTurn } from './kitchen.ts';

/** An advisor whose idle time comes when the test says so. */
function desk() {
  const board = createBoard(exampleJob());
  const waiting: { work: () => void; off: boolean }[] = [];
  const propose = vi.fn(function* (): Generator<undefined, readonly Proposal[], undefined> {
    yield;
    return [];
  });
  const combine = vi.fn(function* (): Generator<undefined, readonly Combination[], undefined> {
    yield;
    return [];
  });
  const advisor = createAdvisor(board, {
    propose,
    combine,
    schedule(work) {
      const entry = { work, off: false };
      waiting.push(entry);
      return () => {
        entry.off = true;
      };
    },
  });
  const idle = () => {
    for (const entry of waiting.splice(0)) if (!entry.off) entry.work();
  };
  return { board, advisor, propose, combine, idle };
}

describe('the advisor', () => {
  it('waits for idle time before it computes', () => {
    const { advisor, propose, idle } = desk();
    expect(propose).not.toHaveBeenCalled();
    expect(advisor.getState().computing).toBe(true);
    idle();
    expect(propose).toHaveBeenCalledTimes(1);
    expect(advisor.getState().computing).toBe(false);
  });

  it('looks for combinations once the single changes stand', () => {
    const { advisor, combine, idle } = desk();
    expect(combine).not.toHaveBeenCalled();
    idle();
    expect(advisor.getState()).toMatchObject({ computing: false, combining: true });
    idle();
    expect(combine).toHaveBeenCalledTimes(1);
    expect(advisor.getState().combining).toBe(false);
  });

  it('looks for other combinations for another goal, and proposes nothing again', () => {
    const { board, advisor, propose, combine, idle } = desk();
    idle();
    idle();
    advisor.setGoal('cheap');
    expect(advisor.getState()).toMatchObject({ goal: 'cheap', combining: true });
    idle();
    expect(propose).toHaveBeenCalledTimes(1);
    const { job, schemeId, speed } = board.getState();
    expect(combine).toHaveBeenLastCalledWith(job, schemeId, { speed, goal: 'cheap', singles: [] });
  });

  it('keeps for itself no longer than half a frame, however long the search', () => {
    const board = createBoard(exampleJob());
    const waiting: (() => void)[] = [];
    let steps = 0;
    createAdvisor(board, {
      schedule: (work) => {
        waiting.push(work);
        return () => {};
      },
      *propose() {
        const end = performance.now() + 40;
        while (performance.now() < end) {
          steps += 1;
          yield;
        }
        return [];
      },
    });
    waiting.shift()?.();
    expect(steps).toBeGreaterThan(0);
    expect(waiting).toHaveLength(1);
  });

  it('computes once for several edits in a row, for the last of them', () => {
    const { board, propose, idle } = desk();
    idle();
    const { moved } = firstTurn(board.getState().job);
    board.dispatch('move turn', moved(0.01));
    board.dispatch('move turn', moved(0.01));
    board.dispatch('move turn', moved(0.01));
    idle();
    expect(propose).toHaveBeenCalledTimes(2);
    expect(propose).toHaveBeenLastCalledWith(board.getState().job, board.getState().schemeId, {
      speed: board.getState().speed,
    });
  });

  it('leaves a gesture in progress alone and computes after it', () => {
    const { board, advisor, idle } = desk();
    board.preview(firstTurn(board.getState().job).moved(0.01));
    idle();
    expect(advisor.getState().computing).toBe(true);
    board.preview(null);
    idle();
    expect(advisor.getState().computing).toBe(false);
  });

  it('computes again for another speed, and not for another hover', () => {
    const { board, propose, idle } = desk();
    idle();
    board.set({ hover: { nodes: ['n1'], segments: [] } });
    idle();
    expect(propose).toHaveBeenCalledTimes(1);
    board.set({ speed: 0 });
    idle();
    expect(propose).toHaveBeenCalledTimes(2);
  });

  it('shows nothing of the scheme that was looked at before', () => {
    const { board, advisor, idle } = desk();
    idle();
    board.set({ schemeId: board.getState().job.schemes[1]?.id ?? '' });
    expect(advisor.getState()).toMatchObject({ computing: true, proposals: [] });
  });

  it('computes nothing more once it is stopped', () => {
    const { board, advisor, propose, idle } = desk();
    advisor.stop();
    board.set({ speed: 0 });
    idle();
    expect(propose).not.toHaveBeenCalled();
  });
});
