import { words } from '../words/index.ts';
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

const { keys } = words.shell;

const named: Readonly<Record<string, string>> = {
  ArrowLeft: '←',
  ArrowRight: '→',
  ArrowUp: '↑',
  ArrowDown: '↓',
  Escape: keys.escape,
  ' ': keys.space,
  Enter: keys.enter,
  Tab: keys.tab,
  Backspace: keys.backspace,
  Delete: keys.delete,
  ContextMenu: keys.menu,
  Alt: keys.alt,
};

/** What is held down while another key is pressed. */
const held: Readonly<Record<string, string>> = { Mod: keys.control, Shift: keys.shift };
const onMacs: Readonly<Record<string, string>> = { Mod: '⌘', Shift: '⇧', Delete: '⌫' };

/** As it is printed beside a command: `Ctrl+Shift+Z`, or `⇧⌘Z` on a Mac. */
export function printed(shortcut: Shortcut, mac: boolean): string {
  const parts = shortcut.split(/\+(?=.)/);
  const printedKey = (key: string) => named[key] ?? (key.length === 1 ? key.toUpperCase() : key);
  if (!mac) return parts.map((part) => held[part] ?? printedKey(part)).join('+');
  const order = ['Shift', 'Mod'];
  return parts
    .toSorted((a, b) => (order.indexOf(a) + 1 || 9) - (order.indexOf(b) + 1 || 9))
    .map((part) => onMacs[part] ?? printedKey(part))
    .join('');
}

/** False for the keys that mean something inside a text field, which keeps them. */
export function worksWhileTyping(shortcut: Shortcut): boolean {
  if (/^F\d+$/.test(shortcut)) return true;
  return shortcut.startsWith('Mod+') && !/\+([zyaxcvd]|Arrow\w+)$/.test(shortcut);
}
