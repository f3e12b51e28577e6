import { firstKinds, type ToolKinds } from '../canvas/board.ts';
import { type KindTool, toolKinds } from '../canvas/tools/tool-kinds.ts';
import type { AppStore } from './store.ts';

const key = 'gentlebend.kinds';

/** The kinds chosen in this browser before; what is missing or no longer made is as at first. */
export function keptKinds(): ToolKinds {
  try {
    return kindsFrom(JSON.parse(localStorage.getItem(key) ?? 'null'));
  } catch {
    return firstKinds;
  }
}

/** What was kept, as far as it names kinds that the tools make. */
export function kindsFrom(kept: unknown): ToolKinds {
  if (typeof kept !== 'object' || kept === null) return firstKinds;
  const known = Object.entries(kept).filter(
    ([tool, kind]) => tool in toolKinds && toolKinds[tool as KindTool].some(({ id }) => id === kind),
  );
  return { ...firstKinds, ...Object.fromEntries(known) };
}

/** Remembers every kind that a tool is given, from now on. */
export function rememberKinds(board: AppStore): void {
  board.subscribe(({ kinds }, before) => {
    if (kinds === before.kinds) return;
    try {
      localStorage.setItem(key, JSON.stringify(kinds));
    } catch {
      // A browser that keeps nothing still draws the kind that was chosen.
    }
  });
}
