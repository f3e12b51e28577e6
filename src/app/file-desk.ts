import { type Autosave, type JobStore, startAutosave } from '../files/autosave.ts';
import { type ChosenFile, fileNameFor, openJobFile, saveJobFile } from '../files/open-save.ts';
import { readJob } from '../files/read.ts';
import { writeJob } from '../files/write.ts';
import type { Job } from '../graph/document.ts';
import { equal } from '../graph/history.ts';
import { words } from '../words/index.ts';
import { refusal, repaired } from './notices.ts';
import type { AppStore } from './store.ts';
import type { Ui } from './ui.ts';

const says = words.notices;

export interface FileDeskState {
  /** The file that `Save` writes to. */
  readonly name: string | null;
  /** True where the file, if any, holds less than the board. */
  readonly unsaved: boolean;
}

/** Opening and saving, with the work kept in the browser all along. */
export interface FileDesk {
  getState(): FileDeskState;
  subscribe(listener: () => void): () => void;
  open(): Promise<void>;
  save(): Promise<void>;
  saveAs(): Promise<void>;
  /** Puts another job on the board, after asking where unsaved work would go. */
  replace(job: () => Job): void;
  /** Writes what is outstanding before the page goes away. */
  leave(): void;
}

/** The dialogs of the browser. */
export interface FileDialogs {
  open: typeof openJobFile;
  save: typeof saveJobFile;
}

export interface FileDeskOptions {
  readonly board: AppStore;
  readonly ui: Ui;
  readonly store: JobStore;
  readonly name: string | null;
  readonly unsaved: boolean;
  readonly dialogs?: FileDialogs;
  /** Told once another job is on the board. */
  readonly onOpened?: () => void;
}

export function createFileDesk(options: FileDeskOptions): FileDesk {
  const { board, ui, store } = options;
  const dialogs = options.dialogs ?? { open: openJobFile, save: saveJobFile };
  const listeners = new Set<() => void>();
  let state: FileDeskState = { name: options.name, unsaved: options.unsaved };
  let file: ChosenFile | null = null;
  let saved: Job | null = options.unsaved ? null : board.getState().job;

  const tell = (next: FileDeskState) => {
    if (next.name === state.name && next.unsaved === state.unsaved) return;
    state = next;
    for (const listener of listeners) listener();
  };

  let told = false;
  const autosave: Autosave = startAutosave(store, {
    onError: (error) => {
      if (told) return;
      told = true;
      ui.setState({
        notice: {
          title: says.notKept.title,
          text: says.notKept.text,
          details: [{ path: '', message: messageOf(error) }],
        },
      });
    },
  });
  const keep = () => autosave.changed(() => ({ text: writeJob(board.getState().job), fileName: state.name }));

  board.subscribe((now, before) => {
    if (now.job === before.job) return;
    keep();
    tell({ ...state, unsaved: !equal(now.job, saved) });
  });

  const put = (job: Job, chosen: ChosenFile | null) => {
    file = chosen;
    saved = job;
    board.open(job);
    options.onOpened?.();
    tell({ name: chosen?.name ?? null, unsaved: false });
    keep();
  };

  /** Does `next` at once, or asks first where work would be lost. */
  const afterAsking = (next: () => void) => {
    if (!state.unsaved) {
      next();
      return;
    }
    ui.setState({
      notice: {
        title: says.notSaved.title,
        text: says.notSaved.text,
        details: [],
        confirm: { label: says.notSaved.goOn, run: next },
      },
    });
  };

  const write = async (to: ChosenFile) => {
    const { job } = board.getState();
    try {
      const written = await dialogs.save(writeJob(job), to);
      if (!written) return;
      file = written;
      saved = job;
      tell({ name: written.name, unsaved: !equal(board.getState().job, job) });
      keep();
    } catch (error) {
      ui.setState({
        notice: { title: says.savingFailed.title, text: messageOf(error), details: [] },
      });
    }
  };

  const suggested = (): ChosenFile => ({
    name: state.name ?? fileNameFor(board.getState().job.title),
    handle: null,
  });

  const choose = async () => {
    try {
      const chosen = await dialogs.open();
      if (!chosen) return;
      const read = readJob(chosen.text);
      if (!read.ok) {
        ui.setState({ notice: refusal(chosen.name, read.problems) });
        return;
      }
      put(read.job, { name: chosen.name, handle: chosen.handle });
      if (read.repairs.length > 0) ui.setState({ notice: repaired(chosen.name, read.repairs) });
    } catch (error) {
      ui.setState({
        notice: { title: says.openingFailed.title, text: messageOf(error), details: [] },
      });
    }
  };

  return {
    getState: () => state,
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    async open() {
      afterAsking(() => void choose());
    },
    save: () => write(file ?? suggested()),
    saveAs: () => write(suggested()),
    replace: (job) => afterAsking(() => put(job(), null)),
    leave: () => autosave.flushNow(),
  };
}

function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
