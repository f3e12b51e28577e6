import { words } from '../../words/index.ts';
import type { FileDesk } from '../file-desk.ts';
import type { AppStore } from '../store.ts';
import type { JobsDesk } from './desk.ts';

interface Watched {
  readonly board: AppStore;
  readonly files: FileDesk;
  readonly jobs: JobsDesk;
  readonly say: (text: string) => void;
}

/**
 * Names the page after the job, marks it while a file holds less than the board, says what becomes of the lock, and
 * asks before the page is left only where work would be lost with it.
 */
export function followWork({ board, files, jobs, say }: Watched): void {
  const name = () => {
    const { title } = board.getState().job;
    const mark = files.getState().unsaved ? '• ' : '';
    const shown = title.trim() === '' ? words.jobs.untitled : title;
    document.title = words.jobs.file.pageTitle(mark, shown);
  };
  name();
  board.subscribe((state, before) => {
    if (state.job.title !== before.job.title) name();
  });

  let { hold, keeping } = files.getState();
  files.subscribe(() => {
    name();
    const now = files.getState();
    if (now.hold !== hold && now.hold === 'mine' && now.reason === 'freed') say(words.jobs.hold.freed);
    if (now.hold !== hold && now.hold === 'mine' && now.reason === 'took over') say(words.jobs.hold.tookOver);
    if (now.keeping !== keeping && now.keeping === 'kept') say(words.jobs.room.again);
    hold = now.hold;
    keeping = now.keeping;
  });

  window.addEventListener('pagehide', () => files.leave());
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden') files.leave();
  });
  window.addEventListener('beforeunload', (event) => {
    if (!files.leave()) event.preventDefault();
  });
  void jobs.load();
}
