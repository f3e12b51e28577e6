import { words } from '../../words/index.ts';
import type { App } from '../command.ts';
import { exampleJob } from '../start.ts';

const key = 'gentlebend.guide';

/**
 * Begins the tour on the very first visit of a browser that can remember it. Whoever came for something
 * (`bare` is false), or has work here, is not a newcomer then or later.
 */
export function greet(app: App, bare: boolean): void {
  if (!neverSeen()) return;
  if (bare) beginGuide(app);
  else remember('ended');
}

function neverSeen(): boolean {
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
function beginGuide({ ui }: App): void {
  remember('begun');
  ui.setState({ guide: 0 });
}

/** Ends the tour, wherever it is. */
export function endGuide({ ui, say }: App): void {
  remember('ended');
  ui.setState({ guide: null });
  say(words.guide.card.ended);
}
