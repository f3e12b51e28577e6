import type { KeyInput } from './tool.ts';

/** Where a shortcut counts: with the sheets in view, in the select tool, with a leg in hand, or where a tool is typed into. */
export type KeyScope = 'sheets' | 'select' | 'draw' | 'type';

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
  { action: 'tool.select', keys: ['v'], title: 'Select and move', scope: 'sheets' },
  { action: 'tool.draw', keys: ['d'], title: 'Draw duct', scope: 'sheets' },
  { action: 'tool.hood', keys: ['h'], title: 'Place hood', scope: 'sheets' },
  { action: 'tool.cap', keys: ['c'], title: 'Place cap', scope: 'sheets' },
  { action: 'tool.insert', keys: ['n'], title: 'Insert a node', scope: 'sheets' },
  { action: 'tool.pan', keys: ['p'], title: 'Pan', scope: 'sheets' },
  { action: 'tool.part', keys: ['i'], title: 'Place a part in line', scope: 'sheets' },
  { action: 'tool.split', keys: ['s'], title: 'Split a run', scope: 'sheets' },
  { action: 'tool.join', keys: ['j'], title: 'Join two ends', scope: 'sheets' },
  { action: 'tool.block', keys: ['b'], title: 'Draw a block', scope: 'sheets' },
  { action: 'tool.exit', keys: ['x'], title: 'Draw an exit face', scope: 'sheets' },
  { action: 'tool.dimension', keys: ['l'], title: 'Dimension', scope: 'sheets' },
  { action: 'tool.note', keys: ['w'], title: 'Pin a note', scope: 'sheets' },
  { action: 'tool.measure', keys: ['q'], title: 'Measure', scope: 'sheets' },
  { action: 'menu', keys: ['ContextMenu', 'Shift+F10'], title: 'Menu of what is selected', scope: 'sheets' },
  { action: 'tool.underlay', keys: ['g'], title: 'Move an underlay', scope: 'sheets' },
  { action: 'tool.scale', keys: ['k'], title: 'Set the scale of an underlay', scope: 'sheets' },
  { action: 'pan', keys: [' '], title: 'Pan with the pointer', scope: 'sheets', hold: true },
  { action: 'free', keys: ['Alt'], title: 'Suspend snapping', scope: 'sheets', hold: true },
  { action: 'zoom.in', keys: ['+', '='], title: 'Zoom in', scope: 'sheets' },
  { action: 'zoom.out', keys: ['-'], title: 'Zoom out', scope: 'sheets' },
  { action: 'zoom.fit', keys: ['0'], title: 'Fit the drawing', scope: 'sheets' },
  { action: 'cancel', keys: ['Escape'], title: 'Cancel', scope: 'sheets' },
  { action: 'delete', keys: ['Delete', 'Backspace'], title: 'Delete and heal the run', scope: 'select' },
  { action: 'edit', keys: ['Enter', 'F2'], title: 'Type the length, the words or the name', scope: 'select' },
  { action: 'move', keys: ['m'], title: 'Move by a typed distance', scope: 'select' },
  { action: 'radius', keys: ['r'], title: 'Type the radius of a bend', scope: 'select' },
  { action: 'repeat', keys: ['Shift+Enter'], title: 'Repeat a block at a spacing', scope: 'select' },
  { action: 'join', keys: ['Mod+j'], title: 'Join the two ends selected', scope: 'select' },
  { action: 'split', keys: ['Mod+Backspace'], title: 'Split the run at the turn selected', scope: 'select' },
  { action: 'cycle', keys: ['Tab'], title: 'Select what else is under the pointer', scope: 'select' },
  {
    action: 'cycle.back',
    keys: ['Shift+Tab'],
    title: 'Select what was under the pointer before',
    scope: 'select',
  },
  { action: 'select.all', keys: ['Mod+a'], title: 'Select everything', scope: 'select' },
  { action: 'nudge.left', keys: ['ArrowLeft'], title: 'Nudge left', scope: 'select' },
  { action: 'nudge.right', keys: ['ArrowRight'], title: 'Nudge right', scope: 'select' },
  { action: 'nudge.up', keys: ['ArrowUp'], title: 'Nudge up', scope: 'select' },
  { action: 'nudge.down', keys: ['ArrowDown'], title: 'Nudge down', scope: 'select' },
  { action: 'nudge.far.left', keys: ['Shift+ArrowLeft'], title: 'Nudge left ten steps', scope: 'select' },
  { action: 'nudge.far.right', keys: ['Shift+ArrowRight'], title: 'Nudge right ten steps', scope: 'select' },
  { action: 'nudge.far.up', keys: ['Shift+ArrowUp'], title: 'Nudge up ten steps', scope: 'select' },
  { action: 'nudge.far.down', keys: ['Shift+ArrowDown'], title: 'Nudge down ten steps', scope: 'select' },
  { action: 'leg.commit', keys: ['Enter'], title: 'Draw the typed leg, or end the run', scope: 'draw' },
  { action: 'leg.field', keys: ['Tab', 'Shift+Tab'], title: 'Type the length or the angle', scope: 'draw' },
  { action: 'leg.back', keys: ['Backspace'], title: 'Erase, or take back the last leg', scope: 'draw' },
  { action: 'leg.up', keys: ['u'], title: 'Go up by a typed height', scope: 'draw' },
  { action: 'leg.down', keys: ['d'], title: 'Go down by a typed height', scope: 'draw' },
  { action: 'leg.cap', keys: ['c'], title: 'End the run with a cap', scope: 'draw' },
  { action: 'type.commit', keys: ['Enter'], title: 'Take what is typed', scope: 'type' },
  { action: 'type.cancel', keys: ['Escape'], title: 'Leave it', scope: 'type' },
  { action: 'type.erase', keys: ['Backspace'], title: 'Erase', scope: 'type' },
  { action: 'type.next', keys: ['Tab'], title: 'Type the next number, or take the next kind', scope: 'type' },
  { action: 'type.back', keys: ['Shift+Tab'], title: 'Go back to the number or kind before', scope: 'type' },
  { action: 'aim.right', keys: ['ArrowRight'], title: 'Aim right', scope: 'draw' },
  { action: 'aim.left', keys: ['ArrowLeft'], title: 'Aim left', scope: 'draw' },
  { action: 'aim.up', keys: ['ArrowUp'], title: 'Aim up the sheet', scope: 'draw' },
  { action: 'aim.down', keys: ['ArrowDown'], title: 'Aim down the sheet', scope: 'draw' },
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
