import { createStore } from 'zustand/vanilla';
import { startAutosave } from '../../files/autosave.ts';
import { digestOf, type LinkedFile, portrayed, type VersionReason } from '../../files/jobs/cards.ts';
import type { Channel } from '../../files/jobs/channel.ts';
import { createHold, type HoldReason, type HoldState } from '../../files/jobs/hold.ts';
import { type Library, Overtaken, type Work } from '../../files/jobs/library.ts';
import type { Locks } from '../../files/jobs/locks.ts';
import { losesMuch } from '../../files/jobs/risk.ts';
import type { Versions } from '../../files/jobs/versions.ts';
import { readJob } from '../../files/read.ts';
import { writeJob } from '../../files/write.ts';
import type { Job } from '../../graph/document.ts';
import { equal } from '../../graph/history.ts';
import type { AppStore } from '../store.ts';

/** The job on the board as this browser keeps it. */
export interface KeeperState {
  readonly id: string;
  readonly file: LinkedFile | null;
  /** Nobody has changed it since it was made. */
  readonly fresh: boolean;
  /** True where the file, if any, holds less than the board. */
  readonly unsaved: boolean;
  readonly hold: HoldState;
  readonly reason: HoldReason;
  /** Whether the last change is kept: no where there is no room, or the browser fails otherwise. */
  readonly keeping: 'kept' | 'full' | 'failing';
  /** A change that is not kept would still be there after a reload. */
  readonly safe: boolean;
}

/** A job that comes onto the board. */
export interface Arriving {
  readonly id: string;
  readonly job: Job;
  readonly file: LinkedFile | null;
  readonly fresh: boolean;
  readonly unsaved: boolean;
  /** When what lies on the shelf of it was changed last; null where none of it is there yet. */
  readonly keptAt: number | null;
  /** What lies on the shelf is this very job. */
  readonly asKept: boolean;
}

/** What to keep a version of, where it is not the board as it is now. */
interface Noting {
  readonly name?: string;
  readonly job?: Job;
  readonly id?: string;
}

/** Keeps the job on the board: its lock, its text after each change, its versions. */
export interface Keeper {
  getState(): KeeperState;
  subscribe(listener: () => void): () => void;
  /** Puts another job on the board; the one before is written first. */
  put(next: Arriving): Promise<void>;
  /** Ties the job to a file that holds `job`. */
  filed(file: LinkedFile, job: Job): void;
  /** Keeps the board, or an earlier state of it or of another job, as a version. */
  note(reason: VersionReason, noting?: Noting): Promise<void>;
  flush(): Promise<void>;
  /** Writes what is outstanding before the page goes away; false where work may be lost with it. */
  leave(): boolean;
  /** True where the board holds what is kept nowhere. */
  outstanding(): boolean;
  takeOver(): Promise<void>;
}

export interface KeeperOptions {
  readonly board: AppStore;
  readonly library: Library;
  readonly versions: Versions;
  /** Whether what is kept outlives the page. */
  readonly lasting: boolean;
  readonly locks: Locks;
  readonly channel: Channel;
  readonly tab: string;
  readonly first: Arriving;
  /** Called when somebody edits what another tab has. */
  readonly onRefused: () => void;
  /** Told which job this tab has, for the time after a reload. */
  readonly remember?: (id: string) => void;
  readonly now?: () => number;
}

/** A version is kept after so much work, ms. */
const betweenVersions = 5 * 60_000;

const picturesOf = ({ underlays }: Job): ReadonlySet<string> => new Set(underlays.map(({ image }) => image));

export function createKeeper(options: KeeperOptions): Keeper {
  const { board, library, versions, channel, first, now = Date.now, remember = () => {} } = options;
  let saved: Job | null = first.unsaved ? null : first.job;
  let since = first.keptAt ?? 0;
  /** Pictures that lie on the shelf with the job, whatever comes of the write that is under way. */
  let shelved: ReadonlySet<string> = first.asKept ? picturesOf(first.job) : new Set();
  let versionAt = now();
  /** Set while another job comes onto the board: that is no edit. */
  let changing = false;
  const store = createStore<KeeperState>(() => ({
    id: first.id,
    file: first.file,
    fresh: first.fresh,
    unsaved: first.unsaved,
    hold: 'taking',
    reason: 'asked',
    keeping: 'kept',
    safe: true,
  }));
  const state = store.getState;

  const snapshot = (): Work => {
    const { job } = board.getState();
    const { id, file, fresh } = state();
    return { id, job, file, fresh, at: now(), since, shelved };
  };
  const work = (): Work => ({
    ...snapshot(),
    portrait: portrayed(board.getState().job, board.solutionOf),
  });

  const failed = (error: unknown) => {
    if (error instanceof Overtaken) return apart();
    const keeping = (error as { name?: unknown } | null)?.name === 'QuotaExceededError' ? 'full' : 'failing';
    store.setState({ keeping });
  };

  const autosave = startAutosave<Work>(
    {
      save: async (of) => {
        const here = () => state().id === of.id;
        const pictures = picturesOf(of.job);
        if (here()) shelved = new Set([...shelved].filter((picture) => pictures.has(picture)));
        const { changedAt } = await library.keep(of);
        if (here()) [since, shelved] = [changedAt, pictures];
        channel.post({ kind: 'kept', job: of.id });
      },
      saveNow: (of) => {
        const safe = library.keepNow(of);
        store.setState({ safe });
        return safe;
      },
    },
    {
      now,
      onError: failed,
      onKept: () => {
        if (!autosave.outstanding()) store.setState({ keeping: 'kept', safe: true });
        if (now() - versionAt > betweenVersions) void note('working');
      },
    },
  );

  const note = async (reason: VersionReason, noting: Noting = {}): Promise<void> => {
    const { name = '', job = board.getState().job, id = state().id } = noting;
    versionAt = now();
    try {
      await versions.note(job, { job: id, reason, name, at: now() });
      channel.post({ kind: 'listed' });
    } catch (error) {
      failed(error);
      if (reason === 'named' || reason === 'elsewhere') throw error;
    }
  };

  /** What this tab has must not go over what another wrote: it becomes a version, and that one's is shown. */
  const apart = () => {
    autosave.drop();
    const { id } = state();
    void note('elsewhere')
      .then(() => library.forget(id))
      .catch(() => {})
      .then(refresh);
  };

  const lock = () => {
    const mine = state().hold === 'mine' || state().hold === 'taking';
    board.hold(mine ? null : options.onRefused);
  };

  /** Shows what another tab has made of the job meanwhile. */
  const refresh = async () => {
    const { id } = state();
    const kept = await library.open(id);
    if (!kept || state().id !== id) return;
    const read = readJob(kept.text);
    [since, shelved] = [kept.card.changedAt, read.ok ? picturesOf(read.job) : new Set()];
    if (!read.ok || kept.card.digest === digestOf(writeJob(board.getState().job))) return;
    const { file } = kept.card;
    const { schemeId } = board.getState();
    saved = file?.holds === kept.card.digest ? read.job : null;
    changing = true;
    board.open(read.job);
    changing = false;
    if (read.job.schemes.some((scheme) => scheme.id === schemeId)) board.set({ schemeId });
    store.setState({ file, fresh: false, unsaved: saved === null });
  };

  const hold = createHold({
    locks: options.locks,
    channel,
    tab: options.tab,
    flush: () => autosave.flush(),
    onState: (next, reason) => {
      if (next === 'mine' && (reason === 'freed' || reason === 'took over')) {
        void refresh().finally(() => {
          store.setState({ hold: hold.state(), reason });
          lock();
        });
        return;
      }
      if (next === 'elsewhere' && autosave.outstanding()) apart();
      store.setState({ hold: next, reason });
      lock();
    },
  });

  board.subscribe((at, before) => {
    if (at.job === before.job || changing) return;
    store.setState({ fresh: false, unsaved: !equal(at.job, saved) });
    autosave.changed(work);
    // The tab may crash before it is written.
    library.keepNow(snapshot());
    if (losesMuch(before.job, at.job)) void note('before', { name: at.undoLabel ?? '', job: before.job });
  });

  channel.listen((message) => {
    if (message.kind === 'kept' && message.job === state().id && hold.state() !== 'mine') void refresh();
  });

  const arrive = async ({ id, keptAt }: Arriving) => {
    remember(id);
    versionAt = now();
    if (!(await hold.take(id))) await refresh();
    else if (keptAt !== null) await note('opened');
  };
  /** Keeps a job that came from elsewhere before anybody has changed it. */
  const keepArrived = async ({ id, asKept }: Arriving) => {
    if (asKept || state().id !== id || state().hold !== 'mine') return;
    autosave.changed(work);
    await autosave.flush();
  };
  // The address that it came by is cleared at once; what nobody has changed can be made again.
  if (!first.fresh && !first.asKept) library.keepNow(snapshot());
  void arrive(first).then(() => (first.fresh ? undefined : keepArrived(first)));

  return {
    getState: state,
    subscribe: store.subscribe,
    note,
    flush: () => autosave.flush(),
    outstanding: () => autosave.outstanding(),
    takeOver: () => hold.takeOver(),

    async put(next) {
      // What is done in the moment of writing is written too.
      for (let i = 0; i < 3 && autosave.outstanding(); i += 1) await autosave.flush();
      autosave.drop();
      const left = state();
      saved = next.unsaved ? null : next.job;
      since = next.keptAt ?? 0;
      shelved = next.asKept ? picturesOf(next.job) : new Set();
      changing = true;
      board.open(next.job);
      changing = false;
      const { id, file, fresh, unsaved } = next;
      store.setState({ id, file, fresh, unsaved, keeping: 'kept', safe: true });
      if (left.fresh && left.id !== id) await library.throwAway([left.id]).catch(() => {});
      await arrive(next);
      await keepArrived(next);
    },

    filed(file, job) {
      saved = job;
      store.setState({ file, fresh: false, unsaved: !equal(board.getState().job, job) });
      autosave.changed(work);
    },

    leave() {
      const kept = autosave.flushNow();
      return options.lasting ? kept : !state().unsaved || library.keepNow(snapshot());
    },
  };
}
