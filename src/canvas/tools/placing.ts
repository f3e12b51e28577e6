import { nothing } from '../board.ts';
import { actionOf } from './keys.ts';
import type { Phase, PointerInput, ToolContext } from './tool.ts';

export interface Placing {
  readonly name: string;
  /** Shows what a click here would do. */
  show(at: PointerInput): void;
  /** Does it, at the place where the button is let go of. */
  place(at: PointerInput): void;
}

/** The one phase of a tool that acts on a click; Escape leaves the tool. */
export function placing({ board, draw, hover }: ToolContext, { name, show, place }: Placing): Phase {
  let pressed = false;
  const clear = () => {
    draw(null, []);
    hover(nothing);
  };
  const self: Phase = {
    name,
    cursor: 'copy',
    get pressed() {
      return pressed;
    },
    leave: clear,
    out: clear,
    move(at) {
      show(at);
      return undefined;
    },
    down(at) {
      pressed = at.button === 0;
      return undefined;
    },
    up(at) {
      if (pressed) place(at);
      pressed = false;
      return undefined;
    },
    key(input) {
      if (actionOf(input, 'sheets') !== 'cancel') return false;
      board.set({ tool: 'select' });
      return true;
    },
    cancel() {
      pressed = false;
      return self;
    },
  };
  return self;
}
