import { describe, expect, it, vi } from 'vitest';
import { createFileDesk, type FileDialogs } from '../../../src/app/file-desk.ts';
import { createBoard } from '../../../src/app/store.ts';
import { createUi } from '../../../src/app/ui.ts';
import { memoryStore } from '../../../src/files/autosave.ts';
import { writeJob } from '../../../src/files/write.ts';
import { exampleJob, firstTurn } from './kitchen.ts';

function desk(opened: string | null = null) {
  const board = createBoard(exampleJob());
  const ui = createUi();
  const store = memoryStore();
  const open: FileDialogs['open'] = async () =>
    opened === null ? null : { name: 'other.gentlebend.json', handle: null, text: opened };
  const written: string[] = [];
  const save: FileDialogs['save'] = async (text, file) => {
    written.push(text);
    return file;
  };
  const onOpened = vi.fn();
  const files = createFileDesk({
    board,
    ui,
    store,
    name: null,
    unsaved: false,
    dialogs: { open, save },
    onOpened,
  });
  const edit = () => board.dispatch('move turn', firstTurn(board.getState().job).moved(0.01));
  return { board, ui, store, files, written, onOpened, edit };
}

describe('saving', () => {
  it('writes what is on the board and then has nothing unsaved', async () => {
    const { board, files, written, edit } = desk();
    edit();
    expect(files.getState().unsaved).toBe(true);
    await files.save();
    expect(written).toEqual([writeJob(board.getState().job)]);
    expect(files.getState()).toEqual({ name: 'invented-example-kitchen.gentlebend.json', unsaved: false });
  });
});

describe('opening', () => {
  it('puts the job of the file on the board', async () => {
    const other = { ...exampleJob(), title: 'The other kitchen' };
    const { board, files, onOpened } = desk(writeJob(other));
    await files.open();
    await vi.waitFor(() => expect(onOpened).toHaveBeenCalled());
    expect(board.getState().job).toEqual(other);
    expect(files.getState()).toEqual({ name: 'other.gentlebend.json', unsaved: false });
  });

  it('refuses a broken file, names the place and leaves the board alone', async () => {
    const broken = writeJob(exampleJob()).replace(/"title": "[^"]*"/, '"title": 7');
    const { board, ui, files } = desk(broken);
    const before = board.getState().job;
    await files.open();
    await vi.waitFor(() => expect(ui.getState().notice).not.toBeNull());
    expect(ui.getState().notice?.details.map((d) => d.path)).toEqual(['title']);
    expect(board.getState().job).toBe(before);
  });

  it('asks first where work would be lost', async () => {
    const other = { ...exampleJob(), title: 'The other kitchen' };
    const { board, ui, files, edit, onOpened } = desk(writeJob(other));
    edit();
    await files.open();
    expect(board.getState().job.title).not.toBe('The other kitchen');
    ui.getState().notice?.confirm?.run();
    await vi.waitFor(() => expect(onOpened).toHaveBeenCalled());
    expect(board.getState().job.title).toBe('The other kitchen');
  });
});

describe('a page that goes away', () => {
  it('has kept the last edit', async () => {
    const { board, store, files, edit } = desk();
    edit();
    files.leave();
    const kept = await store.load();
    expect(kept?.text).toBe(writeJob(board.getState().job));
  });
});
