import { words } from '../../words/index.ts';
import type { App } from '../command.ts';
import { onMac } from '../controls.tsx';
import { whenIdle } from '../idle-work.ts';
import { printed } from '../shortcut.ts';
import { printsItself, takeDeskNext } from './printing.ts';
import './browser-print.css';

const says = words.jobSheet.print.instead;

/** How long the desk rests before the sheet's code is loaded, ms. */
const restFirst = 1500;

type LayPaper = typeof import('./paper-now.tsx').layPaper;

/**
 * Gives the job sheet to a browser that prints by its own menu. It asks for the page in the very moment and waits
 * for nothing, so that the sheet's code is loaded before, in idle time; where it is not there yet, or the route is
 * too long, one page says what to do.
 */
export function followBrowserPrint(app: App): void {
  let layPaper: LayPaper | null = null;
  let takeAway: (() => void) | null = null;
  whenIdle(() => {
    void loaded().then(
      (code) => {
        layPaper = code;
      },
      () => {
        // Without it the page says what to do.
      },
    );
  }, restFirst);

  window.addEventListener('beforeprint', () => {
    const desk = takeDeskNext();
    takeAway?.();
    takeAway = desk || printsItself(app.ui.getState()) ? null : lay(app, layPaper);
  });
  window.addEventListener('afterprint', () => {
    takeAway?.();
    takeAway = null;
  });
}

async function loaded(): Promise<LayPaper> {
  const { layPaper, loadLetters } = await import('./paper-now.tsx');
  await loadLetters();
  return layPaper;
}

/** Puts what is printed beside the desk, which is not printed then; the returned function takes it away. */
function lay(app: App, layPaper: LayPaper | null): () => void {
  const place = document.createElement('div');
  place.className = 'paper-alone';
  document.body.append(place);
  const clear = layPaper?.(app, place);
  if (!clear) place.append(instead(layPaper ? says.long : says.early));
  return () => {
    clear?.();
    place.remove();
  };
}

function instead(why: string): Element {
  const page = document.createElement('section');
  page.className = 'paper-instead';
  const add = (tag: 'h1' | 'p', text: string) => {
    const line = document.createElement(tag);
    line.textContent = text;
    page.append(line);
  };
  add('h1', says.heading);
  add('p', why);
  add('p', says.do(printed('Mod+p', onMac)));
  return page;
}
