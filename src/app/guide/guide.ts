import { words } from '../../words/index.ts';
import type { App } from '../command.ts';
import { exampleJob } from '../start.ts';

const key = 'gentlebend.guide';

/** True where this browser has not seen the tour, and can remember that it has. */
export function neverGuided(): boolean {
  try {
    return localStorage.getItem(key) === null;
  } catch {
    return false;
  }
}

function remember(how: 'begun' | 'ended'): void {
  try {
    localStorage.setItem(key, how);
  } catch {
    // A browser that keeps nothing does not begin by itself either.
  }
}

/** Begins the tour with the example on the board; the job that was there stays among those of this browser. */
export function startGuide(app: App): void {
  app.ui.setState({ table: false, charts: false, routeSearch: false, faults: false, panel: 'proposals' });
  void app.files.replace(exampleJob).then(() => beginGuide(app));
}

/** Begins the tour with what is on the board. It is seen from now on, whatever becomes of it. */
export function beginGuide({ ui }: App): void {
  remember('begun');
  ui.setState({ guide: 0 });
}

/** Ends the tour, wherever it is. */
export function endGuide({ ui, say }: App): void {
  remember('ended');
  ui.setState({ guide: null });
  say(words.guide.card.ended);
}
