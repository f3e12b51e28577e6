import { flushSync } from 'react-dom';
import { createRoot } from 'react-dom/client';
import { jobSheetNow } from '../../files/job-sheet/content.ts';
import type { App } from '../command.ts';
import { AppContext } from '../context.ts';
import { JobSheetPaper } from './JobSheetPaper.tsx';
import './print.css';

/** A letter of each of the font's files that a sheet needs and the desk may not: Latin, more of it, and Greek. */
const letters = 'aāρ';

/** Has the letters there before they are needed. */
export async function loadLetters(): Promise<void> {
  await document.fonts.load('1rem "Inter Variable"', letters);
}

/**
 * Lays the job sheet of what is on the desk into `place` before it returns. The returned function takes it away;
 * null where the route is too long for that.
 */
export function layPaper(app: App, place: Element): (() => void) | null {
  const { job, schemeId } = app.board.getState();
  const sheet = jobSheetNow(job, schemeId, new Date());
  if (!sheet) return null;
  const root = createRoot(place);
  flushSync(() =>
    root.render(
      <AppContext value={app}>
        <JobSheetPaper sheet={sheet} />
      </AppContext>,
    ),
  );
  return () => root.unmount();
}
