import { describe, expect, it, vi } from 'vitest';
import { createAdvisor } from '../../../src/app/advisor.ts';
import { createBoard } from '../../../src/app/store.ts';
import { exampleJob, firstTurn } from './kitchen.ts';

/** An advisor whose idle time comes when the test says so. */
function desk() {
  const board = createBoard(exampleJob());
  const waiting: { work: () => void; off: boolean }[] = [];
  const propose = vi.fn(() => []);
  const advisor = createAdvisor(board, {
    propose,
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
  return { board, advisor, propose, idle };
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
    const { board, propose, idle } = desk();
    board.preview(firstTurn(board.getState().job).moved(0.01));
    idle();
    expect(propose).not.toHaveBeenCalled();
    board.preview(null);
    idle();
    expect(propose).toHaveBeenCalledTimes(1);
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
