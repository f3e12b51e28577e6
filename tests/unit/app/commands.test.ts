import { describe, expect, it, vi } from 'vitest';
import { type App, commandById, commands } from '../../../src/app/commands.ts';
import { matches, printed } from '../../../src/app/shortcut.ts';
import { createBoard } from '../../../src/app/store.ts';
import { createUi } from '../../../src/app/ui.ts';
import { exampleJob, firstTurn } from './kitchen.ts';

function program() {
  const board = createBoard(exampleJob());
  const files = {
    open: vi.fn(async () => {}),
    save: vi.fn(async () => {}),
    saveAs: vi.fn(async () => {}),
    replace: vi.fn(async () => {}),
  };
  const sheets = {
    attach: () => () => {},
    fit: vi.fn(),
    reveal: vi.fn(),
    views: () => ({}),
    show: vi.fn(),
    centre: () => ({ u: 0, v: 0 }),
  };
  const underlays = {
    getState: () => ({ stage: { stage: 'idle' as const }, listed: false }),
    subscribe: () => () => {},
    choose: vi.fn(async () => {}),
    read: vi.fn(async () => {}),
    place: vi.fn(async () => {}),
    cancel: vi.fn(),
    list: vi.fn(),
  };
  const advisor = {
    getState: () => ({
      computing: false,
      proposals: [],
      combining: false,
      combinations: [],
      goal: 'air' as const,
      measure: { need: 0, flow: 0 },
      speed: null,
    }),
    subscribe: () => () => {},
    setGoal: vi.fn(),
    stop: () => {},
  };
  const app: App = {
    board,
    ui: createUi(),
    files: files as unknown as App['files'],
    jobs: {} as App['jobs'],
    sheets,
    advisor,
    underlays,
    say: vi.fn(),
  };
  const run = (id: string) => commandById(id).run(app);
  const title = (id: string) => commandById(id).title(board.getState());
  const enabled = (id: string) => commandById(id).enabled(board.getState());
  return { app, board, files, sheets, run, title, enabled };
}

const press = (
  key: string,
  held: Partial<Record<'ctrlKey' | 'metaKey' | 'shiftKey' | 'altKey', boolean>> = {},
) => ({
  key,
  ctrlKey: false,
  metaKey: false,
  shiftKey: false,
  altKey: false,
  ...held,
});

describe('the registry', () => {
  it('has no id twice', () => {
    expect(new Set(commands.map((c) => c.id)).size).toBe(commands.length);
  });

  it('has no shortcut twice', () => {
    const keys = commands.flatMap((c) => c.shortcuts);
    expect(new Set(keys).size).toBe(keys.length);
  });

  it('refuses an id that it does not have', () => {
    expect(() => commandById('edit.explode')).toThrow('no command "edit.explode"');
  });

  it('titles every command in every state of the example', () => {
    const { board } = program();
    for (const command of commands) expect(command.title(board.getState())).toMatch(/^[A-Z]/);
  });
});

describe('undo', () => {
  it('says what it takes back', () => {
    const { board, title, enabled, run } = program();
    expect(enabled('edit.undo')).toBe(false);
    board.dispatch('move turn', firstTurn(board.getState().job).moved(0.1));
    expect(title('edit.undo')).toBe('Undo move turn');
    run('edit.undo');
    expect(title('edit.redo')).toBe('Redo move turn');
    expect(enabled('edit.undo')).toBe(false);
  });
});

describe('deleting', () => {
  it('needs something selected', () => {
    expect(program().enabled('edit.delete')).toBe(false);
  });

  it('heals the run where a turn was, as one step', () => {
    const { board, run } = program();
    const before = board.getState().job.schemes[0];
    const { id } = firstTurn(board.getState().job);
    board.set({ selection: { nodes: [id], segments: [] } });
    run('edit.delete');
    const after = board.getState().job.schemes[0];
    expect(after?.nodes.map((n) => n.id)).not.toContain(id);
    expect(after?.segments.length).toBe((before?.segments.length ?? 0) - 1);
    expect(board.stats.commits).toBe(1);
  });
});

describe('a tool', () => {
  it('is in hand once it is picked', () => {
    const { board, run } = program();
    run('tool.draw');
    expect(board.getState().tool).toBe('draw');
    expect(commandById('tool.draw').checked?.(board.getState())).toBe(true);
    expect(commandById('tool.select').checked?.(board.getState())).toBe(false);
  });
});

describe('a scheme', () => {
  it('that is duplicated is shown, delivers the same air and leaves the first alone', () => {
    const { board, run } = program();
    const before = board.getState();
    run('scheme.duplicate');
    const after = board.getState();
    expect(after.job.schemes.length).toBe(before.job.schemes.length + 1);
    expect(after.schemeId).not.toBe(before.schemeId);
    expect(after.job.schemes[0]).toBe(before.job.schemes[0]);
    expect(after.solution.speeds.map((s) => s.outcome.solved && s.outcome.flow)).toEqual(
      before.solution.speeds.map((s) => s.outcome.solved && s.outcome.flow),
    );
  });

  it('that is added is shown', () => {
    const { board, run } = program();
    run('scheme.new');
    const { job, schemeId } = board.getState();
    expect(schemeId).toBe(job.schemes.at(-1)?.id);
  });

  it('that is the last one cannot be deleted', () => {
    const { board, run, enabled } = program();
    while (board.getState().job.schemes.length > 1) run('scheme.delete');
    expect(enabled('scheme.delete')).toBe(false);
  });
});

describe('a change of units', () => {
  it('changes how numbers are shown and no number of the document', () => {
    const { board, run } = program();
    const { schemes, hoods } = board.getState().job;
    run('view.units');
    expect(board.getState().units).toBe('metric');
    expect(board.getState().job.schemes).toBe(schemes);
    expect(board.getState().job.hoods).toBe(hoods);
  });
});

describe('a shortcut', () => {
  it('means one thing with Shift and another without', () => {
    expect(matches('Mod+z', press('z', { ctrlKey: true }))).toBe(true);
    expect(matches('Mod+z', press('Z', { ctrlKey: true, shiftKey: true }))).toBe(false);
    expect(matches('Mod+Shift+z', press('Z', { metaKey: true, shiftKey: true }))).toBe(true);
  });

  it('without Ctrl is not the key with Ctrl', () => {
    expect(matches('d', press('d', { ctrlKey: true }))).toBe(false);
    expect(matches('d', press('d'))).toBe(true);
  });

  it('of a sign does not mind the Shift that makes it', () => {
    expect(matches('+', press('+', { shiftKey: true }))).toBe(true);
  });

  it('is printed as the keyboard in front of it writes it', () => {
    expect(printed('Mod+Shift+z', false)).toBe('Ctrl+Shift+Z');
    expect(printed('Mod+Shift+z', true)).toBe('⇧⌘Z');
    expect(printed('Mod+ArrowRight', false)).toBe('Ctrl+→');
    expect(printed(' ', false)).toBe('Space');
  });
});
