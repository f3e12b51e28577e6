import { type App, commands } from './commands.ts';
import { matches, worksWhileTyping } from './shortcut.ts';

/**
 * Runs the command of a shortcut that nothing nearer has used; the answer stops listening. Typing into
 * a field, a list or a menu never picks a tool.
 */
export function listenForShortcuts(app: App): () => void {
  const hear = (event: KeyboardEvent) => {
    if (event.defaultPrevented || event.isComposing) return;
    const command = commands.find((c) => c.shortcuts.some((shortcut) => applies(shortcut, event)));
    if (!command || command.byBrowser || (copies.has(command.id) && textIsMarked())) return;
    event.preventDefault();
    takeTyped(event.target);
    if (command.enabled(app.board.getState())) command.run(app);
  };
  window.addEventListener('keydown', hear);
  return () => window.removeEventListener('keydown', hear);
}

/** Where text of the page is marked, copying means that text. */
const copies = new Set(['edit.copy', 'edit.cut']);

function textIsMarked(): boolean {
  return window.getSelection()?.isCollapsed === false;
}

const textFields = 'input, textarea, select, [contenteditable]';
const ownTyping = '[role="menu"], [role="listbox"], [role="dialog"], [role="alertdialog"], [role="tablist"]';

/** What stands in a field belongs to what is saved, printed or sent: leaving the field takes it. */
function takeTyped(target: EventTarget | null): void {
  if (!(target instanceof HTMLElement && target.matches(textFields))) return;
  target.blur();
  target.focus({ preventScroll: true });
}

function applies(shortcut: string, event: KeyboardEvent): boolean {
  if (!matches(shortcut, event)) return false;
  const at = event.target instanceof Element ? event.target : null;
  if (at?.closest(textFields)) return worksWhileTyping(shortcut);
  if (shortcut.startsWith('Mod+')) return true;
  return !at?.closest(ownTyping);
}
