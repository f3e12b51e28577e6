import { describe, expect, it, vi } from 'vitest';
import { createFileDesk } from '../../../../src/app/file-desk.ts';
import { createJobsDesk } from '../../../../src/app/jobs/desk.ts';
import { createKeeper } from '../../../../src/app/jobs/keeper.ts';
import { beginning } from '../../../../src/app/start.ts';
import { createBoard } from '../../../../src/app/store.ts';
import { createUi } from '../../../../src/app/ui.ts';
import { digestOf } from '../../../../src/files/jobs/cards.ts';
import type { StorageRoom } from '../../../../src/files/jobs/room.ts';
import { writeJob } from '../../../../src/files/write.ts';
import { fillable, keepingOf, sharedChannel, sharedLocks } from '../../../support/kept-jobs.ts';
import { exampleJob, firstTurn } from '../kitchen.ts';

vi.stubGlobal('navigator', { language: 'en-US' });

async function desk(usage = 1) {
  const locks = sharedLocks();
  const channel = sharedChannel();
  const { shelf, state: disk } = fillable();
  const kept = { ...keepingOf('tab', shelf), locks: locks.of('tab'), channel: channel.of('tab') };
  const board = createBoard(exampleJob());
  const ui = createUi();
  const first = { ...beginning(exampleJob()), fresh: false };
  const keeper = createKeeper({ ...kept, board, lasting: true, first, onRefused: () => {} });
  const say = vi.fn();
  const files = createFileDesk({ board, ui, keeper, library: kept.library });
  const room: StorageRoom = {
    estimate: async () => ({ usage, quota: 100, lasting: false }),
    askToStay: async () => true,
  };
  const saved: { name: string; bytes: Uint8Array }[] = [];
  const dialogs = {
    choose: async () => null,
    save: async (bytes: Uint8Array, name: string) => saved.push({ name, bytes }) > 0,
  };
  const jobs = createJobsDesk({ ...kept, board, ui, files, keeper, room, say, dialogs });
  const edit = () => board.dispatch('move turn', firstTurn(board.getState().job).moved(0.01));
  edit();
  await keeper.flush();
  await jobs.load();
  const titles = () =>
    (jobs.getState().cards ?? []).filter(({ deletedAt }) => deletedAt === null).map(({ title }) => title);
  return {
    ...kept,
    board,
    ui,
    keeper,
    files,
    jobs,
    say,
    edit,
    titles,
    disk,
    other: locks.of('other'),
    saved,
  };
}

const hereOf = ({ keeper }: Awaited<ReturnType<typeof desk>>) => keeper.getState().id;

describe('restoring a version', () => {
  it('is one edit, which undo takes back', async () => {
    const { board, jobs, edit } = await desk();
    await jobs.keepVersion('as quoted');
    const then = board.getState().job;
    edit();
    const now = board.getState().job;
    const commits = board.stats.commits;
    const [version] = jobs.getState().versions;
    await jobs.restore(version?.id ?? '');
    expect(board.getState().job).toEqual(then);
    expect(board.stats.commits).toBe(commits + 1);
    board.undo();
    expect(board.getState().job).toEqual(now);
  });

  it('keeps how the job was before as a version', async () => {
    const { board, jobs, edit } = await desk();
    await jobs.keepVersion('as quoted');
    edit();
    const before = digestOf(writeJob(board.getState().job));
    await jobs.restore(jobs.getState().versions[0]?.id ?? '');
    expect(jobs.getState().versions.map(({ digest }) => digest)).toContain(before);
  });

  it('does nothing where the board is the same already', async () => {
    const { board, jobs, say } = await desk();
    await jobs.keepVersion('as quoted');
    const commits = board.stats.commits;
    await jobs.restore(jobs.getState().versions[0]?.id ?? '');
    expect(board.stats.commits).toBe(commits);
    expect(say).toHaveBeenLastCalledWith(expect.stringMatching(/the same/));
  });

  it('can be done beside the job, as one of its own', async () => {
    const made = await desk();
    const { board, jobs, files } = made;
    const first = hereOf(made);
    await jobs.keepVersion('as quoted');
    await jobs.copyVersion(jobs.getState().versions[0]?.id ?? '');
    expect(files.getState().id).not.toBe(first);
    expect(board.getState().job.title).toMatch(/^Invented example kitchen \(as of /);
  });
});

describe('a large deletion', () => {
  it('keeps a version of how it was before', async () => {
    const { board, jobs } = await desk();
    const before = digestOf(writeJob(board.getState().job));
    board.dispatch('delete scheme', (job) => {
      job.schemes.pop();
    });
    await vi.waitFor(async () => {
      await jobs.load();
      expect(jobs.getState().versions[0]).toMatchObject({
        reason: 'before',
        name: 'delete scheme',
        digest: before,
      });
    });
  });
});

describe('the list of jobs', () => {
  it('renames the job on the board by an edit', async () => {
    const made = await desk();
    await made.jobs.rename(hereOf(made), 'Renamed');
    expect(made.board.getState().job.title).toBe('Renamed');
    expect(made.titles()).toEqual(['Renamed']);
    made.board.undo();
    expect(made.board.getState().job.title).toBe('Invented example kitchen');
  });

  it('leaves a job alone that another tab has', async () => {
    const made = await desk();
    const { jobs, other, say, titles } = made;
    await jobs.duplicate(hereOf(made));
    const copy = jobs.getState().cards?.find(({ title }) => title.endsWith('(copy)'));
    const holding = await other.take(copy?.id ?? '');
    await jobs.rename(copy?.id ?? '', 'Renamed');
    await jobs.remove(copy?.id ?? '');
    expect(titles()).toContain('Invented example kitchen (copy)');
    expect(say).toHaveBeenLastCalledWith(expect.stringMatching(/open in another tab/));
    holding?.release();
    await jobs.remove(copy?.id ?? '');
    expect(titles()).toEqual(['Invented example kitchen']);
  });

  it('puts another job on the board when that on it is deleted, and brings the deleted one back', async () => {
    const made = await desk();
    const { board, jobs, titles } = made;
    const first = hereOf(made);
    await jobs.duplicate(first);
    await jobs.remove(first);
    expect(board.getState().job.title).toBe('Invented example kitchen (copy)');
    expect(titles()).toEqual(['Invented example kitchen (copy)']);
    await jobs.bringBack(first);
    expect(titles().sort()).toEqual(['Invented example kitchen', 'Invented example kitchen (copy)']);
  });

  it('begins a job from a template without touching the template', async () => {
    const { board, jobs } = await desk();
    await jobs.saveTemplate('Usual', false);
    await jobs.begin(jobs.getState().templates[0] ?? 'wall');
    expect(board.getState().job).toMatchObject({ title: 'Usual', blocks: [] });
    board.dispatch('rename job', (job) => {
      job.title = 'Changed';
    });
    expect(jobs.getState().templates.map(({ title }) => title)).toEqual(['Usual']);
  });
});

describe('room', () => {
  it('is told of when nine tenths are used, until the person knows', async () => {
    const { jobs } = await desk(91);
    expect(jobs.getState().nearlyFull).toBe(true);
    jobs.dismiss();
    await jobs.load();
    expect(jobs.getState().nearlyFull).toBe(false);
  });

  it('that is missing is said in a sentence with what can be done, and nothing is lost', async () => {
    const { board, ui, jobs, disk, titles } = await desk();
    const before = board.getState().job;
    disk.full = true;
    await jobs.keepVersion('as quoted');
    expect(ui.getState().notice?.text).toMatch(/no room left.*Delete versions/);
    expect([board.getState().job, titles()]).toEqual([before, ['Invented example kitchen']]);
  });
});

describe('an export', () => {
  it('can be imported again, and then changes nothing', async () => {
    const { ui, jobs, saved, titles } = await desk();
    vi.stubGlobal('localStorage', undefined);
    await jobs.exportAll();
    const [file] = saved;
    expect(file?.name).toMatch(/^gentlebend-\d{4}-\d\d-\d\d\.zip$/);
    const bytes = file?.bytes ?? new Uint8Array();
    await jobs.importAll({ name: 'all.zip', arrayBuffer: async () => bytes.buffer as ArrayBuffer });
    expect(ui.getState().notice).toMatchObject({
      title: 'all.zip was imported',
      text: 'All of it was here already.',
    });
    expect(titles()).toEqual(['Invented example kitchen']);
  });
});
