import { digestOf, freshId, type JobCard, type LinkedFile } from '../files/jobs/cards.ts';
import type { Library } from '../files/jobs/library.ts';
import {
  type ChosenFile,
  fileNameFor,
  type OpenedFile,
  openJobFile,
  saveJobFile,
  textOf,
} from '../files/open-save.ts';
import { readJob } from '../files/read.ts';
import { writeJob } from '../files/write.ts';
import type { Job } from '../graph/document.ts';
import { words } from '../words/index.ts';
import type { Arriving, Keeper, KeeperState } from './jobs/keeper.ts';
import { messageOf, notKept } from './jobs/telling.ts';
import { refusal, repaired } from './notices.ts';
import { beginning } from './start.ts';
import type { AppStore } from './store.ts';
import type { Notice, Ui } from './ui.ts';

export interface FileDeskState extends KeeperState {
  /** The file that `Save` writes to. */
  readonly name: string | null;
}

/** Opening and saving, with the work kept in the browser all along. */
export interface FileDesk {
  getState(): FileDeskState;
  subscribe(listener: () => void): () => void;
  open(): Promise<void>;
  save(): Promise<void>;
  saveAs(): Promise<void>;
  /** Puts files that were opened onto the board, the first of them, and among the jobs. */
  take(files: readonly OpenedFile[]): Promise<void>;
  /** Puts another job on the board. The one before stays among the jobs of this browser. */
  replace(job: () => Job): Promise<void>;
  /** The same with one that is worth keeping before anybody has changed it. */
  add(job: Job): Promise<void>;
  /** Puts a job of this browser on the board. */
  bring(id: string): Promise<void>;
  /** Goes on with a copy of what the board shows. */
  copy(): Promise<void>;
  /** Takes the job from the tab that has it. */
  takeOver(): Promise<void>;
  /** Writes what is outstanding before the page goes away; false where work may be lost with it. */
  leave(): boolean;
}

/** The dialogs of the browser. */
export interface FileDialogs {
  open: typeof openJobFile;
  save: typeof saveJobFile;
}

export interface FileDeskOptions {
  readonly board: AppStore;
  readonly ui: Ui;
  readonly keeper: Keeper;
  readonly library: Library;
  readonly dialogs?: FileDialogs;
  /** Told once another job is on the board. */
  readonly onOpened?: () => void;
  readonly say?: (text: string) => void;
}

const says = words.jobs.file;

export function createFileDesk(options: FileDeskOptions): FileDesk {
  const { board, ui, keeper, library, say = () => {}, onOpened = () => {} } = options;
  const dialogs = options.dialogs ?? { open: openJobFile, save: saveJobFile };
  const tell = (notice: Notice) => ui.setState({ notice });
  const failed = (title: string, error: unknown) => tell({ title, text: messageOf(error), details: [] });

  let state: FileDeskState = { ...keeper.getState(), name: keeper.getState().file?.name ?? null };
  let seen = keeper.getState();
  const getState = () => {
    const now = keeper.getState();
    if (now !== seen) {
      seen = now;
      state = { ...now, name: now.file?.name ?? null };
    }
    return state;
  };

  const put = async (next: Arriving) => {
    await keeper.put(next);
    onOpened();
  };

  /** Does `next` at once; asks first where the work on the board is kept nowhere. */
  const afterAsking = async (next: () => Promise<void>) => {
    await keeper.flush();
    if (!keeper.outstanding()) return next();
    const { title, text, goOn } = says.unkept;
    tell({ title, text, details: [], confirm: { label: goOn, run: () => void next() } });
  };

  const write = async (to: ChosenFile) => {
    const { job } = board.getState();
    const text = writeJob(job);
    try {
      const written = await dialogs.save(text, to);
      if (!written) return;
      if ('problem' in written) {
        const gone = written.problem === 'gone';
        return tell({
          title: gone ? says.gone(to.name) : says.refused(to.name),
          text: gone ? says.goneText : says.refusedText,
          details: [],
          confirm: { label: says.saveAs, run: () => void write({ name: to.name, handle: null }) },
        });
      }
      keeper.filed({ ...written, holds: digestOf(text) }, job);
      say(says.saved(written.name));
      await keeper.note('saved', { job });
    } catch (error) {
      failed(words.notices.savingFailed.title, error);
    }
  };

  const suggested = (): ChosenFile => ({
    name: keeper.getState().file?.name ?? fileNameFor(board.getState().job.title),
    handle: null,
  });

  /** The job of this browser that a file is of: the same file on the disk, or the same in every character. */
  const knownAs = async (file: ChosenFile, digest: string): Promise<JobCard | null> => {
    const cards = (await library.cards().catch(() => [])).filter(({ deletedAt }) => deletedAt === null);
    for (const card of cards) if (file.handle && (await isSame(file.handle, card.file))) return card;
    return cards.find((card) => card.digest === digest) ?? null;
  };

  /** Puts a file on the board. What this browser had of it and the file lacks becomes a version. */
  const openFile = async ({ name, handle, text }: OpenedFile): Promise<void> => {
    const read = readJob(text);
    if (!read.ok) return tell(refusal(name, read.problems));
    const { job } = read;
    const holds = digestOf(writeJob(job));
    const known = await knownAs({ name, handle }, holds);
    const id = known?.id ?? freshId('job');
    if (known && known.digest !== holds) {
      const kept = await library.open(id);
      const before = kept && readJob(kept.text);
      if (before?.ok) await keeper.note('before', { name: words.jobs.before.file, job: before.job, id });
    }
    const file = { name, handle, holds };
    await put({
      id,
      job,
      file,
      fresh: false,
      unsaved: false,
      keptAt: known?.changedAt ?? null,
      asKept: false,
    });
    if (read.repairs.length > 0) tell(repaired(name, read.repairs));
  };

  const take = async (files: readonly OpenedFile[]): Promise<void> => {
    const [first, ...others] = files;
    if (!first) return;
    const refusedOnes: { path: string; message: string }[] = [];
    let added = 0;
    for (const file of others) {
      const read = readJob(file.text);
      if (!read.ok) {
        const [problem] = read.problems;
        refusedOnes.push({ path: file.name, message: problem?.message ?? '' });
        continue;
      }
      const digest = digestOf(writeJob(read.job));
      if (await knownAs(file, digest)) continue;
      await library.add(file.text, { file: { name: file.name, handle: file.handle, holds: digest } });
      added += 1;
    }
    await openFile(first);
    if (added > 0) say(words.jobs.drop.more(added));
    if (refusedOnes.length > 0)
      tell({ title: says.tooMany, text: words.notices.refused.text, details: refusedOnes });
  };

  /** Looks whether the file of a job is still what it was; the permission is asked for again. */
  const lookAtFile = async (file: LinkedFile) => {
    if (!file.handle) return;
    const found = await textOf(file.handle);
    if (found === 'refused' || keeper.getState().file?.handle !== file.handle) return;
    if (found === 'gone') {
      return tell({
        title: says.gone(file.name),
        text: says.goneText,
        details: [],
        confirm: { label: says.saveAs, run: () => void write({ name: file.name, handle: null }) },
      });
    }
    const read = readJob(found.text);
    if (!read.ok || digestOf(writeJob(read.job)) === file.holds) return;
    tell({
      title: says.changed(file.name),
      text: says.changedText,
      details: [],
      confirm: {
        label: says.changedTake,
        run: () => void openFile({ name: file.name, handle: file.handle, text: found.text }),
      },
    });
  };

  return {
    getState,
    subscribe: keeper.subscribe,

    open: () =>
      afterAsking(async () => {
        try {
          const chosen = await dialogs.open();
          if (chosen) await openFile(chosen);
        } catch (error) {
          failed(words.notices.openingFailed.title, error);
        }
      }),
    save: () => write(keeper.getState().file ?? suggested()),
    saveAs: () => write(suggested()),

    take: (files) => afterAsking(() => take(files).catch((error) => tell(notKept(error)))),

    replace: (job) => afterAsking(() => put(beginning(job()))),

    bring: (id) =>
      afterAsking(async () => {
        const kept = id === keeper.getState().id ? null : await library.open(id);
        if (!kept) return;
        const { card } = kept;
        const read = readJob(kept.text);
        if (!read.ok) return tell(refusal(card.title, read.problems));
        const { file, fresh, changedAt } = card;
        const unsaved = !fresh && file?.holds !== card.digest;
        await put({ id, job: read.job, file, fresh, unsaved, keptAt: changedAt, asKept: true });
        say(words.jobs.said.opened(card.title));
        if (read.repairs.length > 0) tell(repaired(card.title, read.repairs));
        else if (file) await lookAtFile(file);
      }),

    add: (job) => afterAsking(() => put({ ...beginning(job), fresh: false, unsaved: true })),

    copy: async () => {
      const { job } = board.getState();
      const copy = { ...job, title: words.jobs.copyOf(job.title).slice(0, 300) };
      await put({ ...beginning(copy), fresh: false, unsaved: true });
    },

    takeOver: () => keeper.takeOver(),
    leave: () => keeper.leave(),
  };
}

async function isSame(handle: FileSystemFileHandle, file: LinkedFile | null): Promise<boolean> {
  return file?.handle ? await handle.isSameEntry(file.handle).catch(() => false) : false;
}
