import type { Board } from '../canvas/board.ts';

type Theme = 'light' | 'dark';
const key = 'gentlebend.theme';

/** What the person chose here before, else what the system asks for. */
export function wantedTheme(): Theme {
  const chosen = read();
  if (chosen) return chosen;
  return window.matchMedia('(prefers-color-scheme: dark)').matches ? 'dark' : 'light';
}

/** Keeps the page in the board's theme, and remembers a choice that differs from the system's. */
export function followTheme(board: Board): void {
  const show = (theme: Theme) => {
    document.documentElement.dataset.theme = theme;
  };
  show(board.getState().theme);
  board.subscribe((state, before) => {
    if (state.theme === before.theme) return;
    show(state.theme);
    try {
      localStorage.setItem(key, state.theme);
    } catch {
      // A browser that keeps nothing still shows the theme.
    }
  });
}

/** Prints the sheets and the results; a dark desk is light while it is printed. */
export async function printDesk(board: Board): Promise<void> {
  const { theme } = board.getState();
  board.set({ theme: 'light' });
  await nextFrame();
  await nextFrame();
  window.print();
  board.set({ theme });
}

function nextFrame(): Promise<number> {
  return new Promise((resolve) => requestAnimationFrame(resolve));
}

function read(): Theme | null {
  try {
    const kept = localStorage.getItem(key);
    return kept === 'light' || kept === 'dark' ? kept : null;
  } catch {
    return null;
  }
}
