import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { announceResults, createAnnouncer, resultWords } from '../../../src/app/announce.ts';
import { pasteClip } from '../../../src/app/clipboard.ts';
import type { App } from '../../../src/app/command.ts';
import { commandById } from '../../../src/app/commands.ts';
import { createBoard } from '../../../src/app/store.ts';
import { createUi } from '../../../src/app/ui.ts';
import type { Vec3 } from '../../../src/graph/document.ts';
import { schemeOf } from '../../../src/graph/infer.ts';
import { traceRoute } from '../../../src/graph/trace.ts';
import { exampleJob, firstTurn } from './kitchen.ts';

function program() {
  const board = createBoard(exampleJob());
  const ui = createUi();
  const say = vi.fn();
  const sheets = { attach: () => () => {}, fit: vi.fn(), reveal: vi.fn(), views: () => ({}) };
  const app = { board, ui, say, sheets } as unknown as App;
  const run = (id: string) => commandById(id).run(app);
  const scheme = () => schemeOf(board.getState().job, board.getState().schemeId);
  const flow = () => {
    const outcome = board.getState().solution.speeds.at(-1)?.outcome;
    return outcome?.solved ? outcome.flow : null;
  };
  const selectAll = () => run('edit.selectAll');
  return { app, board, ui, say, run, scheme, flow, selectAll };
}

const places = (nodes: readonly { at: Vec3 }[]) => nodes.map(({ at }) => at);

describe('a whole route', () => {
  it('mirrored about its hood keeps the hood in its place and delivers the same air', () => {
    const { run, scheme, flow, selectAll } = program();
    const before = { nodes: scheme().nodes, flow: flow() };
    selectAll();
    run('edit.mirrorX');
    const hood = (nodes: typeof before.nodes) => nodes.find(({ role }) => role === 'hood')?.at;
    expect(hood(scheme().nodes)).toEqual(hood(before.nodes));
    expect(places(scheme().nodes)).not.toEqual(places(before.nodes));
    expect(flow()).toBeCloseTo(before.flow ?? 0, 9);
  });

  it('turned round four times by a quarter is where it was', () => {
    const { run, scheme, selectAll } = program();
    const before = places(scheme().nodes);
    selectAll();
    for (let i = 0; i < 4; i += 1) run('edit.rotate');
    for (const [i, at] of places(scheme().nodes).entries())
      expect(at).toEqual(before[i]?.map((n) => expect.closeTo(n, 8)));
  });

  it('whose flow is reversed has hood and cap exchanged', () => {
    const { board, run, scheme } = program();
    const ends = () => Object.fromEntries(scheme().nodes.map(({ role, at }) => [role, at]));
    const before = ends();
    const [segment] = scheme().segments;
    board.set({ selection: { nodes: [], segments: [segment?.id ?? ''] } });
    run('edit.reverse');
    expect([ends().hood, ends().cap]).toEqual([before.cap, before.hood]);
  });

  it('is selected from one of its ducts', () => {
    const { board, run, scheme } = program();
    board.set({ selection: { nodes: [], segments: [scheme().segments[0]?.id ?? ''] } });
    run('edit.selectRun');
    const { nodes, segments } = board.getState().selection;
    expect([nodes.length, segments.length]).toEqual([scheme().nodes.length, scheme().segments.length]);
  });
});

describe('the clipboard', () => {
  it('pastes what was copied beside it, selects it, and takes one step', () => {
    const { app, ui, board, run, scheme } = program();
    const before = scheme();
    board.set({ selection: { nodes: [], segments: [before.segments[0]?.id ?? ''] } });
    run('edit.copy');
    const { clip } = ui.getState();
    if (!clip) throw new Error('nothing was copied');
    pasteClip(app, clip);
    expect(scheme().segments.length).toBe(before.segments.length + 1);
    expect(board.getState().selection.segments).toEqual([scheme().segments.at(-1)?.id]);
    expect(board.getState().undoLabel).toBe('paste');
    expect(new Set(places(scheme().nodes).map(String)).size).toBe(scheme().nodes.length);
  });

  it('pastes in its own place where nothing stands in the way', () => {
    const { app, ui, run, scheme, selectAll } = program();
    selectAll();
    const before = places(scheme().nodes);
    run('edit.cut');
    expect(scheme().nodes.length).toBe(0);
    const { clip } = ui.getState();
    if (!clip) throw new Error('nothing was copied');
    pasteClip(app, clip);
    expect(places(scheme().nodes)).toEqual(before);
  });
});

describe('the list of edits', () => {
  it('goes to any of its steps and back, to the very documents', () => {
    const { board } = program();
    const jobs = [board.getState().job];
    for (const dz of [0.1, 0.2, 0.3]) {
      board.dispatch(`move turn ${dz}`, firstTurn(board.getState().job).moved(dz));
      jobs.push(board.getState().job);
    }
    expect(board.steps()).toEqual({ labels: ['move turn 0.1', 'move turn 0.2', 'move turn 0.3'], at: 3 });
    for (const to of [1, 0, 3, 2]) {
      board.goTo(to);
      expect(board.getState().job).toEqual(jobs[to]);
      expect(board.steps().at).toBe(to);
    }
  });
});

describe('going along the duct', () => {
  it('meets every row of the table in its order, and says each', () => {
    const { board, run, say } = program();
    const state = board.getState();
    const rows = traceRoute(state.job, state.schemeId);
    const met: string[] = [];
    for (let i = 0; i < rows.length; i += 1) {
      run('run.next');
      const { nodes, segments } = board.getState().selection;
      met.push(...nodes, ...segments);
    }
    expect(met).toEqual(rows.map(({ id }) => id));
    expect(say.mock.calls.map(([words]) => words)).toEqual(rows.map(({ words }) => `${words}.`));
    run('run.next');
    expect(say).toHaveBeenLastCalledWith('The run ends here.');
  });
});

describe('what is said after an edit', () => {
  beforeEach(() => void vi.useFakeTimers());
  afterEach(() => void vi.useRealTimers());

  it('is the air at the speed looked at, its share of rated, and the change', () => {
    const { board, ui } = program();
    const announcer = createAnnouncer(ui);
    announceResults(board, announcer);
    const before = board.getState();
    board.dispatch('change duct size', (job) => {
      const [scheme] = job.schemes;
      if (scheme) scheme.defaults.duct = { shape: 'round', diameter: 0.254 };
    });
    announcer.say('Changed.');
    vi.runAllTimers();
    const said = ui.getState().said.text;
    expect(said).toMatch(/^Boost: \d+ cfm, \d+ % of rated; \d+ cfm more\. Changed\.$/);
    expect(said).toContain(resultWords(board.getState(), before));
  });

  it('compares with what stood before the gesture, not with its last preview', () => {
    const { board, ui } = program();
    const announcer = createAnnouncer(ui);
    announceResults(board, announcer);
    const { moved } = firstTurn(board.getState().job);
    board.preview(moved(0.2));
    board.dispatch('move turn', moved(0.2));
    vi.runAllTimers();
    expect(ui.getState().said.text).toMatch(/ (more|less|about the same)\.$/);
  });

  it('is why there is no air where the edit breaks the run', () => {
    const { board, ui } = program();
    const announcer = createAnnouncer(ui);
    announceResults(board, announcer);
    board.dispatch('delete', (job) => {
      for (const scheme of job.schemes) scheme.segments = [];
    });
    vi.runAllTimers();
    const outcome = board.getState().solution.speeds.at(-1)?.outcome;
    expect(outcome?.solved).toBe(false);
    expect(ui.getState().said.text).toBe(outcome?.solved === false ? outcome.reason : '');
  });
});
