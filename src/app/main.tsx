import '@fontsource-variable/inter/wght.css';
import './tokens.css';
import './desk.css';
import './controls.css';
import './views.css';
import './details.css';
import './panels.css';
import './edit.css';
import './table/table.css';
import './explain/explain.css';
import './kitchen/kitchen.css';
import './strip/speed-card.css';
import './hood/hood.css';
import './strip.css';
import './proposals/proposals.css';
import './tools.css';
import './jobs/job-bar.css';
import './underlay/underlay.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { pictures } from '../canvas/pictures.ts';
import { browserKeeping, tabMemory } from '../files/jobs/browser.ts';
import { choosePicture } from '../files/underlay/choose.ts';
import { words } from '../words/index.ts';
import { Desk } from './App.tsx';
import { createAdvisor } from './advisor.ts';
import { announceResults, createAnnouncer } from './announce.ts';
import { followTellingSection } from './arrangement.ts';
import { listenForPaste } from './clipboard.ts';
import type { App } from './commands.ts';
import { AppContext } from './context.ts';
import { createFileDesk } from './file-desk.ts';
import { greet } from './guide/guide.ts';
import { createJobsDesk } from './jobs/desk.ts';
import { createKeeper } from './jobs/keeper.ts';
import { followWork } from './jobs/watch.ts';
import { keepOffline } from './offline/offline.ts';
import { followBrowserPrint } from './print/browser-print.ts';
import { followFigures, writeAsChosen } from './settings/figures.ts';
import { listenForLinks, startShared } from './share/arrive.ts';
import { createSheetsView } from './sheets-view.ts';
import { firstJob } from './start.ts';
import { createBoard } from './store.ts';
import { followPrinting, followTheme, wantedTheme } from './theme.ts';
import { keptKinds, rememberKinds } from './tool-kinds.ts';
import { createUi } from './ui.ts';
import { createUnderlayDesk } from './underlay/desk.ts';

const kept = await browserKeeping();
const { search, hash } = window.location;
const start = await startShared(hash, () => firstJob(search, kept.library, tabMemory.read()));
// The wish was for this visit: a reload brings back the work.
window.history.replaceState(null, '', window.location.pathname);

const ui = createUi();
writeAsChosen(ui);
const board = createBoard(start.job, { settings: { theme: wantedTheme(), kinds: keptKinds() } });
const sheets = createSheetsView(board);
const announcer = createAnnouncer(ui);
/** What was measured belongs to the job that was closed. */
const onOpened = () => {
  ui.setState({ faults: false, measured: {} });
  sheets.fit();
};
const { say } = announcer;
const keeper = createKeeper({
  ...kept,
  board,
  first: start,
  lasting: kept.shelf.lasting,
  remember: tabMemory.write,
  onRefused: () => say(words.jobs.hold.refused),
});
const files = createFileDesk({ board, ui, keeper, library: kept.library, onOpened, say });
const jobs = createJobsDesk({ ...kept, board, ui, files, keeper, say });
const app: App = {
  board,
  ui,
  sheets,
  files,
  jobs,
  advisor: createAdvisor(board),
  underlays: createUnderlayDesk({
    board,
    ui,
    sheets,
    choose: choosePicture,
    reader: async () => (await import('./underlay/reader.ts')).reader,
  }),
  say,
};
announceResults(board, announcer);
listenForPaste(app);
if (start.notice) ui.setState({ notice: start.notice });
listenForLinks(app);
greet(app, search === '' && hash === '' && start.fresh && !start.asKept);
followFigures(board);
followTheme(board);
rememberKinds(board);
followPrinting(board);
followBrowserPrint(app);
followTellingSection(board);
followWork({ board, files, jobs, say });
if (import.meta.env.PROD && 'serviceWorker' in navigator)
  void keepOffline(ui, {
    container: navigator.serviceWorker,
    reload: () => window.location.reload(),
  }).catch(() => {
    // A browser that keeps nothing still runs the program.
  });

declare global {
  /** A read-only look at the board and at how the sheets lie, for browser tests and for the console. */
  var gentlebend: {
    state(): ReturnType<typeof board.getState>;
    stats(): typeof board.stats;
    views: typeof sheets.views;
    pictures: typeof pictures.stats;
  };
}
globalThis.gentlebend = Object.freeze({
  state: () => board.getState(),
  stats: () => ({ ...board.stats }),
  views: sheets.views,
  pictures: pictures.stats,
});

const root = document.getElementById('root');
if (!root) throw new Error('index.html has an element with the id "root"');
createRoot(root).render(
  <StrictMode>
    <AppContext value={app}>
      <Desk />
    </AppContext>
  </StrictMode>,
);
