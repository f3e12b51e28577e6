import { words } from '../../words/index.ts';
import type { KeyInput } from './tool.ts';

const says = words.tools.keys;

/** Where a shortcut counts: with the sheets in view, in the select tool, with a leg in hand, where a tool is typed into, or before one makes a thing of some kind. */
export type KeyScope = 'sheets' | 'select' | 'draw' | 'type' | 'kind';

interface Row {
  readonly action: string;
  /** Combinations such as `Shift+ArrowUp`; `Mod` is Control, or Command where there is one. */
  readonly keys: readonly string[];
  readonly title: string;
  readonly scope: KeyScope;
  /** Acts while it is held down. */
  readonly hold?: true;
}

/** Every key that the tools answer to. Menus and the list of shortcuts read this table too. */
export const shortcuts = [
  { action: 'tool.select', keys: ['v'], title: words.tools.titles.select, scope: 'sheets' },
  { action: 'tool.draw', keys: ['d'], title: words.tools.titles.draw, scope: 'sheets' },
  { action: 'tool.hood', keys: ['h'], title: words.tools.titles.hood, scope: 'sheets' },
  { action: 'tool.cap', keys: ['c'], title: words.tools.titles.cap, scope: 'sheets' },
  { action: 'tool.insert', keys: ['n'], title: words.tools.titles.insert, scope: 'sheets' },
  { action: 'tool.pan', keys: ['p'], title: words.tools.titles.pan, scope: 'sheets' },
  { action: 'tool.part', keys: ['i'], title: words.tools.titles.part, scope: 'sheets' },
  { action: 'tool.split', keys: ['s'], title: words.tools.titles.split, scope: 'sheets' },
  { action: 'tool.join', keys: ['j'], title: words.tools.titles.join, scope: 'sheets' },
  { action: 'tool.block', keys: ['b'], title: words.tools.titles.block, scope: 'sheets' },
  { action: 'tool.exit', keys: ['x'], title: words.tools.titles.exit, scope: 'sheets' },
  { action: 'tool.dimension', keys: ['l'], title: words.tools.titles.dimension, scope: 'sheets' },
  { action: 'tool.note', keys: ['w'], title: words.tools.titles.note, scope: 'sheets' },
  { action: 'tool.measure', keys: ['q'], title: words.tools.titles.measure, scope: 'sheets' },
  { action: 'menu', keys: ['ContextMenu', 'Shift+F10'], title: says.menu, scope: 'sheets' },
  { action: 'tool.underlay', keys: ['g'], title: words.commands.underlay.move.title, scope: 'sheets' },
  { action: 'tool.scale', keys: ['k'], title: words.commands.underlay.scale.title, scope: 'sheets' },
  { action: 'pan', keys: [' '], title: says.pan, scope: 'sheets', hold: true },
  { action: 'free', keys: ['Alt'], title: says.free, scope: 'sheets', hold: true },
  { action: 'zoom.in', keys: ['+', '='], title: says.zoomIn, scope: 'sheets' },
  { action: 'zoom.out', keys: ['-'], title: says.zoomOut, scope: 'sheets' },
  { action: 'zoom.fit', keys: ['0'], title: words.commands.view.fit.title, scope: 'sheets' },
  { action: 'cancel', keys: ['Escape'], title: says.cancel, scope: 'sheets' },
  { action: 'delete', keys: ['Delete', 'Backspace'], title: says.delete, scope: 'select' },
  { action: 'edit', keys: ['Enter', 'F2'], title: says.edit, scope: 'select' },
  { action: 'move', keys: ['m'], title: says.move, scope: 'select' },
  { action: 'radius', keys: ['r'], title: says.radius, scope: 'select' },
  { action: 'repeat', keys: ['Shift+Enter'], title: says.repeat, scope: 'select' },
  { action: 'join', keys: ['Mod+j'], title: says.join, scope: 'select' },
  { action: 'split', keys: ['Mod+Backspace'], title: says.split, scope: 'select' },
  { action: 'cycle', keys: ['Tab'], title: says.cycle, scope: 'select' },
  {
    action: 'cycle.back',
    keys: ['Shift+Tab'],
    title: says.cycleBack,
    scope: 'select',
  },
  { action: 'select.all', keys: ['Mod+a'], title: says.selectAll, scope: 'select' },
  { action: 'nudge.left', keys: ['ArrowLeft'], title: says.nudge.left, scope: 'select' },
  { action: 'nudge.right', keys: ['ArrowRight'], title: says.nudge.right, scope: 'select' },
  { action: 'nudge.up', keys: ['ArrowUp'], title: says.nudge.up, scope: 'select' },
  { action: 'nudge.down', keys: ['ArrowDown'], title: says.nudge.down, scope: 'select' },
  { action: 'nudge.far.left', keys: ['Shift+ArrowLeft'], title: says.nudgeFar.left, scope: 'select' },
  { action: 'nudge.far.right', keys: ['Shift+ArrowRight'], title: says.nudgeFar.right, scope: 'select' },
  { action: 'nudge.far.up', keys: ['Shift+ArrowUp'], title: says.nudgeFar.up, scope: 'select' },
  { action: 'nudge.far.down', keys: ['Shift+ArrowDown'], title: says.nudgeFar.down, scope: 'select' },
  { action: 'leg.commit', keys: ['Enter'], title: says.leg.commit, scope: 'draw' },
  { action: 'leg.field', keys: ['Tab', 'Shift+Tab'], title: says.leg.field, scope: 'draw' },
  { action: 'leg.back', keys: ['Backspace'], title: says.leg.back, scope: 'draw' },
  { action: 'leg.up', keys: ['u'], title: says.leg.up, scope: 'draw' },
  { action: 'leg.down', keys: ['d'], title: says.leg.down, scope: 'draw' },
  { action: 'leg.cap', keys: ['c'], title: says.leg.cap, scope: 'draw' },
  { action: 'type.commit', keys: ['Enter'], title: says.type.commit, scope: 'type' },
  { action: 'type.cancel', keys: ['Escape'], title: says.type.cancel, scope: 'type' },
  { action: 'type.erase', keys: ['Backspace'], title: says.type.erase, scope: 'type' },
  { action: 'type.next', keys: ['Tab'], title: says.type.next, scope: 'type' },
  { action: 'type.back', keys: ['Shift+Tab'], title: says.type.back, scope: 'type' },
  { action: 'kind.next', keys: ['Tab'], title: says.kind.next, scope: 'kind' },
  { action: 'kind.back', keys: ['Shift+Tab'], title: says.kind.back, scope: 'kind' },
  {
    action: 'kind.take',
    keys: ['1', '2', '3', '4', '5', '6', '7', '8', '9'],
    title: says.kind.take,
    scope: 'kind',
  },
  { action: 'aim.right', keys: ['ArrowRight'], title: says.aim.right, scope: 'draw' },
  { action: 'aim.left', keys: ['ArrowLeft'], title: says.aim.left, scope: 'draw' },
  { action: 'aim.up', keys: ['ArrowUp'], title: says.aim.up, scope: 'draw' },
  { action: 'aim.down', keys: ['ArrowDown'], title: says.aim.down, scope: 'draw' },
] as const satisfies readonly Row[];

export type Action = (typeof shortcuts)[number]['action'];

/** Directions of the arrow keys on a sheet, degrees from the right, as text to be typed. */
export const aims = { 'aim.right': '0', 'aim.up': '90', 'aim.left': '180', 'aim.down': '270' } as const;

const byScope = new Map<string, Action>(
  shortcuts.flatMap((s) => s.keys.map((combo): [string, Action] => [`${s.scope} ${combo}`, s.action])),
);

/** The combination of a key event as the table writes it. Shift counts only where it does not make the character. */
export function comboOf({ key, modifiers }: Pick<KeyInput, 'key' | 'modifiers'>): string {
  const named = key.length > 1;
  const name = named ? key : key.toLowerCase();
  const mod = modifiers.mod ? 'Mod+' : '';
  const alt = modifiers.alt && key !== 'Alt' ? 'Alt+' : '';
  const shift = modifiers.shift && named && key !== 'Shift' ? 'Shift+' : '';
  return `${mod}${alt}${shift}${name}`;
}

/** What a key means in a scope, or `undefined`. */
export function actionOf(input: Pick<KeyInput, 'key' | 'modifiers'>, scope: KeyScope): Action | undefined {
  return byScope.get(`${scope} ${comboOf(input)}`);
}
