import Konva from 'konva/lib/Core.js';
import type { Board } from '../canvas/board.ts';

type Chosen = 'light' | 'dark';
const key = 'gentlebend.theme';

const systemIsDark = window.matchMedia('(prefers-color-scheme: dark)');

/** What the person chose here before, else what the system asks for. */
export function wantedTheme(): Chosen {
  return read() ?? (systemIsDark.matches ? 'dark' : 'light');
}

/**
 * Keeps the page in the board's theme, and remembers what the person chose. As long as nothing was chosen
 * the board goes with the system, which may turn dark in the evening.
 */
export function followTheme(board: Board): void {
  document.documentElement.dataset.theme = board.getState().theme;
  board.subscribe(({ theme }, before) => {
    if (theme === before.theme) return;
    document.documentElement.dataset.theme = theme;
    if (theme === wantedTheme() || theme === 'print' || before.theme === 'print') return;
    try {
      localStorage.setItem(key, theme);
    } catch {
      // A browser that keeps nothing still shows the theme.
    }
  });
  systemIsDark.addEventListener('change', () => {
    if (board.getState().theme !== 'print') board.set({ theme: wantedTheme() });
  });
}

/**
 * Shows sheets in ink on white for as long as the page is printed, whoever asked for it. They are drawn
 * at once: a browser that prints does not wait for the next frame.
 */
export function followPrinting(board: Board): void {
  let theme: Chosen | null = null;
  const show = (printing: boolean) => {
    const now = board.getState().theme;
    if (printing === (now === 'print')) return;
    if (now !== 'print') theme = now;
    board.set({ theme: printing ? 'print' : (theme ?? wantedTheme()) });
    for (const stage of Konva.stages) stage.draw();
  };
  window.addEventListener('beforeprint', () => show(true));
  window.addEventListener('afterprint', () => show(false));
  window.matchMedia('print').addEventListener('change', ({ matches }) => show(matches));
}

function read(): Chosen | null {
  try {
    const kept = localStorage.getItem(key);
    return kept === 'light' || kept === 'dark' ? kept : null;
  } catch {
    return null;
  }
}
