import { describe, expect, it } from 'vitest';
import { createBoard } from '../../../src/app/store.ts';
import { nothing } from '../../../src/canvas/board.ts';
import { exampleJob, firstTurn } from './kitchen.ts';

function topFlow(board: ReturnType<typeof createBoard>): number {
  const outcome = board.getState().solution.speeds.at(-1)?.outcome;
  return outcome?.solved ? outcome.flow : Number.NaN;
}

describe('an edit', () => {
  it('is one commit, one undo step and one solve', () => {
    const job = exampleJob();
    const board = createBoard(job);
    const before = { ...board.stats };
    board.dispatch('move turn', firstTurn(job).moved(0.05));
    expect(board.stats.commits - before.commits).toBe(1);
    expect(board.stats.solves - before.solves).toBe(1);
    expect(board.getState().undoLabel).toBe('move turn');
  });

  it('changes the air that is delivered', () => {
    const job = exampleJob();
    const board = createBoard(job);
    const before = topFlow(board);
    board.dispatch('use small duct', (draft) => {
      for (const segment of draft.schemes[0]?.segments ?? [])
        segment.duct = { shape: 'round', diameter: 0.1 };
    });
    expect(topFlow(board)).toBeLessThan(before);
  });

  it('that changes nothing leaves no step', () => {
    const board = createBoard(exampleJob());
    const before = board.getState();
    board.dispatch('nothing', (draft) => {
      draft.title = String(draft.title);
    });
    expect(board.getState().job).toBe(before.job);
    expect(board.getState().undoLabel).toBeNull();
    expect(board.stats.commits).toBe(0);
  });

  it('of the title does not solve again', () => {
    const board = createBoard(exampleJob());
    const { solution } = board.getState();
    const { solves } = board.stats;
    board.dispatch('rename job', (draft) => {
      draft.title = 'Another kitchen';
    });
    expect(board.stats.solves).toBe(solves);
    expect(board.getState().solution).toBe(solution);
  });

  it('of one scheme does not solve another one again', () => {
    const job = exampleJob();
    const board = createBoard(job);
    const other = board.solutionOf(job.schemes[1]?.id ?? '');
    board.dispatch('move turn', firstTurn(job).moved(0.05));
    expect(board.solutionOf(job.schemes[1]?.id ?? '')).toBe(other);
  });

  it('takes what it removed out of the selection', () => {
    const job = exampleJob();
    const board = createBoard(job);
    const segments = job.schemes[0]?.segments.map((s) => s.id) ?? [];
    board.set({ selection: { nodes: [], segments } });
    board.dispatch('delete', (draft) => {
      draft.schemes[0]?.segments.splice(0, 1);
    });
    expect(board.getState().selection.segments).toEqual(segments.slice(1));
  });
});

describe('undo and redo', () => {
  it('bring back a document that is equal, and then the edited one', () => {
    const job = exampleJob();
    const board = createBoard(job);
    board.dispatch('move turn', firstTurn(job).moved(0.05));
    const edited = board.getState().job;
    board.undo();
    expect(board.getState().job).toEqual(exampleJob());
    expect(board.getState().redoLabel).toBe('move turn');
    board.redo();
    expect(board.getState().job).toEqual(edited);
  });

  it('do nothing at the ends', () => {
    const board = createBoard(exampleJob());
    const before = board.getState();
    board.undo();
    board.redo();
    expect(board.getState()).toBe(before);
  });
});

describe('a preview', () => {
  it('solves what it shows and commits nothing', () => {
    const job = exampleJob();
    const board = createBoard(job);
    const before = board.getState();
    board.preview(firstTurn(job).moved(0.05));
    const during = board.getState();
    expect(during.job).toBe(before.job);
    expect(during.live).not.toBe(before.live);
    expect(during.solution).not.toBe(before.solution);
    expect(during.undoLabel).toBeNull();
    expect(board.stats.commits).toBe(0);
  });

  it('solves once a move, and not at all where the move changes nothing that the air feels', () => {
    const job = exampleJob();
    const board = createBoard(job);
    const { moved } = firstTurn(job);
    const { solves } = board.stats;
    board.preview(moved(0.05));
    board.preview(moved(0.06));
    expect(board.stats.solves - solves).toBe(2);
    board.preview((draft) => {
      draft.notes = 'typing';
    });
    expect(board.stats.solves - solves).toBe(2);
  });

  it('that is dropped leaves the very objects that were there before, without a solve', () => {
    const job = exampleJob();
    const board = createBoard(job);
    const before = board.getState();
    board.preview(firstTurn(job).moved(0.05));
    const { solves } = board.stats;
    board.preview(null);
    expect(board.getState().live).toBe(before.live);
    expect(board.getState().solution).toBe(before.solution);
    expect(board.stats.solves).toBe(solves);
  });

  it('starts from the committed document each time', () => {
    const job = exampleJob();
    const board = createBoard(job);
    const { id, moved } = firstTurn(job);
    const height = job.schemes[0]?.nodes.find((n) => n.id === id)?.at[2] ?? Number.NaN;
    board.preview(moved(0.05));
    board.preview(moved(0.05));
    const live = board.getState().live.schemes[0]?.nodes.find((n) => n.id === id)?.at[2];
    expect(live).toBe(height + 0.05);
  });

  it('ends with an edit', () => {
    const job = exampleJob();
    const board = createBoard(job);
    board.preview(firstTurn(job).moved(0.05));
    board.dispatch('move turn', firstTurn(job).moved(0.02));
    expect(board.getState().live).toBe(board.getState().job);
  });

  it('ends with an edit that changes nothing', () => {
    const job = exampleJob();
    const board = createBoard(job);
    board.preview(firstTurn(job).moved(0.05));
    board.dispatch('nothing', () => {});
    expect(board.getState().live).toBe(job);
  });
});

describe('another scheme', () => {
  it('is shown with its own solution and nothing selected', () => {
    const job = exampleJob();
    const board = createBoard(job);
    board.set({ selection: { nodes: [firstTurn(job).id], segments: [] } });
    const second = job.schemes[1]?.id ?? '';
    board.set({ schemeId: second });
    const state = board.getState();
    expect(state.solution.schemeId).toBe(second);
    expect(state.selection).toBe(nothing);
  });

  it('is solved once however often it is looked at', () => {
    const job = exampleJob();
    const board = createBoard(job);
    const [first, second] = job.schemes.map((s) => s.id);
    board.set({ schemeId: second ?? '' });
    const { solves } = board.stats;
    board.set({ schemeId: first ?? '' });
    board.set({ schemeId: second ?? '' });
    expect(board.stats.solves).toBe(solves);
  });

  it('takes the place of one that was deleted', () => {
    const job = exampleJob();
    const board = createBoard(job);
    board.dispatch('delete scheme', (draft) => {
      draft.schemes.splice(0, 1);
    });
    const state = board.getState();
    expect(state.schemeId).toBe(job.schemes[1]?.id);
    expect(state.solution.schemeId).toBe(state.schemeId);
  });
});

describe('another job', () => {
  it('starts without undo steps and at the top speed', () => {
    const job = exampleJob();
    const board = createBoard(job);
    board.dispatch('move turn', firstTurn(job).moved(0.05));
    board.set({ speed: 0 });
    board.open(exampleJob());
    const state = board.getState();
    expect(state.undoLabel).toBeNull();
    expect(state.speed).toBe(state.solution.speeds.length - 1);
  });

  it('is never seen half opened', () => {
    const board = createBoard(exampleJob());
    const seen: boolean[] = [];
    board.subscribe((state) =>
      seen.push(state.solution.schemeId === state.schemeId && state.live === state.job),
    );
    const other = exampleJob();
    const renamed = other.schemes[0];
    if (renamed) renamed.id = 'elsewhere';
    board.open(other);
    expect(seen).not.toContain(false);
    expect(seen.length).toBeGreaterThan(0);
  });
});
