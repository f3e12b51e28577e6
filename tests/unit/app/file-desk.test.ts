import { afterEach, describe, expect, it, vi } from 'vitest';
import { createFileDesk, type FileDialogs } from '../../../src/app/file-desk.ts';
import { createKeeper } from '../../../src/app/jobs/keeper.ts';
import { beginning } from '../../../src/app/start.ts';
import { createBoard } from '../../../src/app/store.ts';
import { createUi } from '../../../src/app/ui.ts';
import { digestOf } from '../../../src/files/jobs/cards.ts';
import { writeJob } from '../../../src/files/write.ts';
import { fillable, freshLastMoment, keepingOf, sharedChannel, sharedLocks } from '../../support/kept-jobs.ts';
import { exampleJob, firstTurn } from './kitchen.ts';

afterEach(() => {
  vi.useRealTimers();
});

const other = { ...exampleJob(), title: 'The other kitchen' };

function desk(opened: string | null = null, given: Partial<FileDialogs> = {}) {
  const board = createBoard(exampleJob());
  const ui = createUi();
  const { shelf, state: disk } = fillable();
  const last = freshLastMoment();
  const kept = keepingOf('tab-1', shelf, last);
  const first = beginning(board.getState().job);
  const keeper = createKeeper({
    ...kept,
    board,
    lasting: true,
    locks: sharedLocks().of('tab-1'),
    channel: sharedChannel().of('tab-1'),
    first,
    onRefused: () => {},
  });
  const written: string[] = [];
  const dialogs: FileDialogs = {
    open: async () =>
      opened === null ? null : { name: 'other.gentlebend.json', handle: null, text: opened },
    save: async (text, file) => {
      written.push(text);
      return file;
    },
    ...given,
  };
  const onOpened = vi.fn();
  const files = createFileDesk({ board, ui, keeper, library: kept.library, dialogs, onOpened });
  const edit = () => board.dispatch('move turn', firstTurn(board.getState().job).moved(0.01));
  return { board, ui, disk, last, ...kept, keeper, files, written, onOpened, edit, first };
}

describe('saving', () => {
  it('writes what is on the board and then has nothing unsaved', async () => {
    const { board, files, written, edit } = desk();
    edit();
    expect(files.getState().unsaved).toBe(true);
    await files.save();
    expect(written).toEqual([writeJob(board.getState().job)]);
    expect(files.getState()).toMatchObject({
      name: 'invented-example-kitchen.gentlebend.json',
      unsaved: false,
    });
  });

  it('keeps a version of what was saved', async () => {
    const { files, versions, edit, first } = desk();
    edit();
    await files.save();
    expect((await versions.of(first.id)).map(({ reason }) => reason)).toEqual(['saved']);
  });

  it('says that a file is gone, and offers to save under a name', async () => {
    const save = vi.fn<FileDialogs['save']>().mockResolvedValueOnce({ problem: 'gone' });
    save.mockImplementation(async (_, file) => file);
    const { ui, files, edit } = desk(null, { save });
    edit();
    await files.save();
    const notice = ui.getState().notice;
    expect(notice?.title).toMatch(/no longer where it was/);
    expect(files.getState().unsaved).toBe(true);
    notice?.confirm?.run();
    await vi.waitFor(() => expect(files.getState().unsaved).toBe(false));
    expect(save.mock.lastCall?.[1].handle).toBeNull();
  });
});

describe('opening', () => {
  it('puts the job of the file on the board', async () => {
    const { board, files, onOpened } = desk(writeJob(other));
    await files.open();
    expect(onOpened).toHaveBeenCalledOnce();
    expect(board.getState().job).toEqual(other);
    expect(files.getState()).toMatchObject({ name: 'other.gentlebend.json', unsaved: false });
  });

  it('refuses a broken file, names the place and leaves the board alone', async () => {
    const broken = writeJob(exampleJob()).replace(/"title": "[^"]*"/, '"title": 7');
    const { board, ui, files } = desk(broken);
    const before = board.getState().job;
    await files.open();
    expect(ui.getState().notice?.details.map((d) => d.path)).toEqual(['title']);
    expect(board.getState().job).toBe(before);
  });

  it('leaves the job that was on the board among the jobs', async () => {
    const { board, ui, files, library, edit, first } = desk(writeJob(other));
    edit();
    const before = board.getState().job;
    await files.open();
    expect(ui.getState().notice).toBeNull();
    expect((await library.open(first.id))?.text).toBe(writeJob(before));
  });

  it('asks first where the work could be kept nowhere', async () => {
    const { board, ui, disk, files, edit } = desk(writeJob(other));
    disk.full = true;
    edit();
    await files.open();
    expect(board.getState().job.title).not.toBe('The other kitchen');
    disk.full = false;
    ui.getState().notice?.confirm?.run();
    await vi.waitFor(() => expect(board.getState().job.title).toBe('The other kitchen'));
  });

  it('brings the same job when the same file is opened again', async () => {
    const { files, library } = desk(writeJob(other));
    await files.open();
    const { id } = files.getState();
    await files.replace(exampleJob);
    await files.open();
    expect(files.getState().id).toBe(id);
    expect((await library.cards()).filter(({ title }) => title === 'The other kitchen')).toHaveLength(1);
  });

  it('keeps what the browser had of a file, and the file lacks, as a version', async () => {
    const handle = { isSameEntry: async () => true } as unknown as FileSystemFileHandle;
    const open: FileDialogs['open'] = async () => ({ name: 'a.json', handle, text: writeJob(other) });
    const { board, files, versions, edit } = desk(null, { open });
    await files.open();
    edit();
    const mine = writeJob(board.getState().job);
    await files.open();
    const { id } = files.getState();
    expect(board.getState().job).toEqual(other);
    const kept = await versions.of(id);
    expect(kept.map(({ reason, digest }) => [reason, digest])).toContainEqual(['before', digestOf(mine)]);
  });
});

describe('several files at once', () => {
  it('puts the first on the board, the others among the jobs, and names those that are broken', async () => {
    const { board, ui, files, library } = desk();
    const named = (title: string) => ({
      name: `${title}.json`,
      handle: null,
      text: writeJob({ ...exampleJob(), title }),
    });
    await files.take([named('One'), named('Two'), { name: 'three.json', handle: null, text: '{' }]);
    expect(board.getState().job.title).toBe('One');
    expect((await library.cards()).map(({ title }) => title).sort()).toEqual(['One', 'Two']);
    expect(ui.getState().notice?.details.map(({ path }) => path)).toEqual(['three.json']);
  });
});

describe('a page that goes away', () => {
  it('has kept the last edit', async () => {
    const { board, library, files, edit, first } = desk();
    edit();
    expect(files.leave()).toBe(true);
    expect((await library.open(first.id))?.text).toBe(writeJob(board.getState().job));
  });

  it('has kept it even on a full disk, by its last moment', async () => {
    const { board, library, disk, files, edit, first } = desk();
    disk.full = true;
    edit();
    await files.replace(exampleJob);
    expect(files.getState().keeping).toBe('full');
    expect(files.leave()).toBe(true);
    expect((await library.open(first.id))?.text).toBe(writeJob(board.getState().job));
  });

  it('is told where nothing could be kept', () => {
    const { files, disk, last, edit } = desk();
    disk.full = true;
    last.put = () => false;
    edit();
    expect(files.leave()).toBe(false);
  });
});

describe('a job that nobody has changed', () => {
  it('is not left behind among the jobs', async () => {
    const { files, library } = desk();
    await files.replace(() => other);
    expect((await library.cards()).map(({ title }) => title)).toEqual(['The other kitchen']);
    await files.replace(exampleJob);
    expect((await library.cards()).map(({ title }) => title)).toEqual([exampleJob().title]);
  });
});
