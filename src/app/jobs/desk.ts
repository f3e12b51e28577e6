import { createStore } from 'zustand/vanilla';
import type { Keeping } from '../../files/jobs/browser.ts';
import type { JobCard, TemplateCard, VersionCard } from '../../files/jobs/cards.ts';
import { type Estimate, nearlyFull } from '../../files/jobs/room.ts';
import { chooseArchive, saveArchive } from '../../files/open-save.ts';
import { readJob } from '../../files/read.ts';
import type { Job } from '../../graph/document.ts';
import { equal } from '../../graph/history.ts';
import { formatMoment } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import type { FileDesk } from '../file-desk.ts';
import { refusal } from '../notices.ts';
import { newJob } from '../start.ts';
import type { AppStore } from '../store.ts';
import type { Ui } from '../ui.ts';
import { type ArchiveFile, mergeFile, packedShelf } from './archive.ts';
import type { Keeper } from './keeper.ts';
import { type SuppliedTemplate, suppliedJob } from './supplied.ts';
import { notKept } from './telling.ts';

export interface JobsState {
  /** Newest change first, deleted ones among them; null before they were read. */
  readonly cards: readonly JobCard[] | null;
  readonly templates: readonly TemplateCard[];
  /** Of the job on the board, newest first. */
  readonly versions: readonly VersionCard[];
  /** Jobs that any tab has open. */
  readonly held: readonly string[];
  readonly room: Estimate | null;
  readonly lasting: boolean;
  /** Little room is left, and nobody has been told or wished not to be. */
  readonly nearlyFull: boolean;
}

/** The jobs, templates and versions that this browser keeps, as they are listed and changed by hand. */
export interface JobsDesk {
  getState(): JobsState;
  subscribe(listener: () => void): () => void;
  /** Reads the lists again. */
  load(): Promise<void>;
  rename(id: string, title: string): Promise<void>;
  duplicate(id: string): Promise<void>;
  remove(id: string): Promise<void>;
  bringBack(id: string): Promise<void>;
  throwAway(ids: readonly string[]): Promise<void>;
  begin(template: TemplateCard | SuppliedTemplate): Promise<void>;
  saveTemplate(title: string, withRoute: boolean): Promise<void>;
  dropTemplate(card: TemplateCard): Promise<void>;
  keepVersion(name: string): Promise<void>;
  renameVersion(id: string, name: string): Promise<void>;
  dropVersions(ids: readonly string[]): Promise<void>;
  /** Puts a version on the board, as one edit; how it is now is kept as a version. */
  restore(id: string): Promise<void>;
  /** Makes a job of a version, beside the one that it is of. */
  copyVersion(id: string): Promise<void>;
  /** All of it as one file. */
  exportAll(): Promise<void>;
  /** Takes an export in beside what is here: the given one, or one that is asked for. */
  importAll(file?: ArchiveFile): Promise<void>;
  askToStay(): Promise<void>;
  /** The person knows that little room is left. */
  dismiss(): void;
}

export interface JobsDeskOptions extends Omit<Keeping, 'tab'> {
  readonly board: AppStore;
  readonly ui: Ui;
  readonly files: FileDesk;
  readonly keeper: Keeper;
  readonly say: (text: string) => void;
  readonly dialogs?: ArchiveDialogs;
}

/** The dialogs of the browser. */
export interface ArchiveDialogs {
  choose: typeof chooseArchive;
  save: typeof saveArchive;
}

const { said } = words.jobs;

export function createJobsDesk(options: JobsDeskOptions): JobsDesk {
  const { board, ui, files, keeper, shelf, library, versions, templates, locks, channel, room, say } =
    options;
  const dialogs = options.dialogs ?? { choose: chooseArchive, save: saveArchive };
  const store = createStore<JobsState>(() => ({
    cards: null,
    templates: [],
    versions: [],
    held: [],
    room: null,
    lasting: shelf.lasting,
    nearlyFull: false,
  }));
  let dismissed = false;

  const load = async () => {
    const [cards, ownTemplates, ownVersions, held, estimate] = await Promise.all([
      library.cards(),
      templates.all(),
      versions.of(keeper.getState().id),
      locks.held(),
      room.estimate(),
    ]);
    const full = estimate !== null && estimate.usage > nearlyFull * estimate.quota;
    store.setState({
      cards,
      templates: ownTemplates,
      versions: ownVersions,
      held,
      room: estimate,
      nearlyFull: full && !dismissed,
    });
  };

  /** Does something to what is kept, tells the other tabs, and reads the lists again. */
  const doing = async (what: () => Promise<string | undefined>): Promise<void> => {
    try {
      const sentence = await what();
      channel.post({ kind: 'listed' });
      if (sentence) say(sentence);
    } catch (error) {
      ui.setState({ notice: notKept(error) });
    }
    await load().catch(() => {});
  };

  /** The same to a job that no tab has open; what is on the board here is changed there. */
  const doingTo = (id: string, what: () => Promise<string | undefined>) =>
    doing(async () => {
      const holding = await locks.take(id);
      if (!holding) return words.jobs.hold.elsewhere;
      try {
        return await what();
      } finally {
        holding.release();
      }
    });

  const titleOf = (id: string) => store.getState().cards?.find((card) => card.id === id)?.title ?? '';

  const jobOf = async (version: string): Promise<Job | null> => {
    const text = await versions.text(version);
    const read = text === null ? null : readJob(text);
    if (read?.ok) return read.job;
    if (read) ui.setState({ notice: refusal(words.jobs.versions.title(''), read.problems) });
    return null;
  };

  channel.listen((message) => {
    if (store.getState().cards && (message.kind === 'listed' || message.kind === 'kept'))
      void load().catch(() => {});
  });

  const desk: JobsDesk = {
    getState: store.getState,
    subscribe: store.subscribe,
    load: () => load().catch((error) => ui.setState({ notice: notKept(error) })),

    rename: (id, title) =>
      id === keeper.getState().id
        ? doing(async () => {
            board.dispatch(words.edits.job.rename, (job) => {
              job.title = title;
            });
            await keeper.flush();
            return undefined;
          })
        : doingTo(id, async () => {
            await library.rename(id, title);
            return said.renamed(title);
          }),

    duplicate: (id) =>
      doing(async () => {
        if (id === keeper.getState().id) await keeper.flush();
        const made = await library.duplicate(id, words.jobs.copyOf(titleOf(id)).slice(0, 300));
        return made ? said.duplicated(made.title) : undefined;
      }),

    async remove(id) {
      const title = titleOf(id);
      if (id === keeper.getState().id) {
        const next = store
          .getState()
          .cards?.find((card) => card.id !== id && card.deletedAt === null && !card.fresh);
        await (next ? files.bring(next.id) : files.replace(newJob));
        if (keeper.getState().id === id) return;
      }
      await doingTo(id, async () => {
        await library.remove(id);
        return said.deleted(title);
      });
    },

    bringBack: (id) =>
      doing(async () => {
        await library.bringBack(id);
        return said.back(titleOf(id));
      }),

    throwAway: (ids) =>
      doing(async () => {
        await library.throwAway(ids);
        return said.gone(ids.length);
      }),

    async begin(template) {
      const job =
        typeof template === 'string' ? await suppliedJob(template) : await templates.open(template.id);
      if (!job) return;
      const units = typeof template === 'string' ? newJob().units : job.units;
      await files.replace(() => ({ ...job, units }));
    },

    saveTemplate: (title, withRoute) =>
      doing(async () => {
        await templates.save(board.getState().job, { title, withRoute });
        void room.askToStay();
        return said.templateSaved(title);
      }),

    dropTemplate: ({ id, title }) =>
      doing(async () => {
        await templates.drop(id);
        return said.templateDeleted(title);
      }),

    keepVersion: (name) =>
      doing(async () => {
        await keeper.flush();
        await keeper.note('named', { name });
        void room.askToStay();
        return said.versionKept(name);
      }),

    renameVersion: (id, name) =>
      doing(async () => {
        await versions.rename(id, name);
        return undefined;
      }),

    dropVersions: (ids) =>
      doing(async () => {
        await versions.drop(ids);
        return said.versionsDropped(ids.length);
      }),

    restore: (id) =>
      doing(async () => {
        const job = await jobOf(id);
        if (!job) return undefined;
        if (equal(job, board.getState().job)) return said.sameVersion;
        await keeper.note('before', { name: words.jobs.before.restore });
        const edits = board.stats.commits;
        board.dispatch(words.jobs.versions.restored, (draft) => replaceBy(draft, job));
        if (board.stats.commits === edits) return undefined;
        await keeper.flush();
        return said.restored;
      }),

    async copyVersion(id) {
      const job = await jobOf(id);
      const version = store.getState().versions.find((card) => card.id === id);
      if (!job || !version) return;
      const title = words.jobs.fromVersion(job.title, formatMoment(new Date(version.at)));
      await files.add({ ...job, title: title.slice(0, 300) });
    },

    exportAll: () =>
      doing(async () => {
        await keeper.flush();
        const { bytes, name, jobs } = await packedShelf(shelf, new Date());
        return (await dialogs.save(bytes, name))
          ? words.jobs.archive.exported(name, words.jobs.count.jobs(jobs))
          : undefined;
      }),

    importAll: (file) =>
      doing(async () => {
        const chosen = file ?? (await dialogs.choose());
        if (!chosen) return undefined;
        await keeper.flush();
        ui.setState({ notice: await mergeFile(shelf, chosen) });
        void room.askToStay();
        return undefined;
      }),

    async askToStay() {
      const agreed = await room.askToStay();
      if (!agreed) say(words.jobs.room.refused);
      await load().catch(() => {});
    },

    dismiss() {
      dismissed = true;
      store.setState({ nearlyFull: false });
    },
  };
  return desk;
}

/** Makes one document of another by its parts, so that what they share stays the very same. */
function replaceBy(draft: Job, job: Job): void {
  const target = draft as unknown as Record<string, unknown>;
  const source = job as unknown as Record<string, unknown>;
  for (const key of Object.keys(target)) if (!(key in source)) delete target[key];
  for (const [key, value] of Object.entries(source)) if (!equal(target[key], value)) target[key] = value;
}
