/** A key press, as much of it as a shortcut looks at. */
export interface KeyPress {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly shiftKey: boolean;
  readonly altKey: boolean;
}

/** `Mod+Shift+z`: `Mod` is Control, or the command key on a Mac. The last part is the key itself. */
export type Shortcut = string;

/** True where a key press is this shortcut. Shift counts only for letters and named keys: it makes the others. */
export function matches(shortcut: Shortcut, press: KeyPress): boolean {
  const parts = shortcut.split(/\+(?=.)/);
  const key = parts.at(-1) ?? '';
  if (press.altKey || (press.ctrlKey || press.metaKey) !== parts.includes('Mod')) return false;
  if (/^([a-z]|\w{2,})$/i.test(key) && press.shiftKey !== parts.includes('Shift')) return false;
  return press.key.toLowerCase() === key.toLowerCase();
}

const named: Readonly<Record<string, string>> = {
  ArrowLeft: '←',
  ArrowRight: '→',
  ArrowUp: '↑',
  ArrowDown: '↓',
  Escape: 'Esc',
  ' ': 'Space',
};

/** As it is printed beside a command: `Ctrl+Shift+Z`, or `⇧⌘Z` on a Mac. */
export function printed(shortcut: Shortcut, mac: boolean): string {
  const parts = shortcut
    .split(/\+(?=.)/)
    .map((part) => named[part] ?? (part.length === 1 ? part.toUpperCase() : part));
  if (!mac) return parts.map((part) => (part === 'Mod' ? 'Ctrl' : part)).join('+');
  const signs: Record<string, string> = { Mod: '⌘', Shift: '⇧', Delete: '⌫' };
  const order = ['Shift', 'Mod'];
  return parts
    .toSorted((a, b) => (order.indexOf(a) + 1 || 9) - (order.indexOf(b) + 1 || 9))
    .map((part) => signs[part] ?? part)
    .join('');
}

/** False for the keys that mean something inside a text field, which keeps them. */
export function worksWhileTyping(shortcut: Shortcut): boolean {
  return shortcut.startsWith('Mod+') && !/\+([zyaxcvd]|Arrow\w+)$/.test(shortcut);
}
