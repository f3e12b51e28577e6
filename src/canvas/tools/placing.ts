import { nothing } from '../board.ts';
import { actionOf } from './keys.ts';
import type { KeyInput, Phase, PointerInput, ToolContext } from './tool.ts';

export interface Placing {
  readonly name: string;
  /** Shows what a click here would do. */
  show(at: PointerInput): void;
  /** Does it, at the place where the button is let go of. */
  place(at: PointerInput): void;
  /** Other keys of the tool. */
  key?(input: KeyInput): boolean;
}

/** The one phase of a tool that acts on a click; Escape leaves the tool. */
export function placing({ board, draw, hover }: ToolContext, { name, show, place, key }: Placing): Phase {
  let pressed = false;
  let last: PointerInput | null = null;
  const clear = () => {
    last = null;
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
      last = at;
      show(at);
      return undefined;
    },
    down(at) {
      pressed = at.button === 0;
      return undefined;
    },
    up(at) {
      if (pressed) {
        place(at);
        last = null;
      }
      pressed = false;
      return undefined;
    },
    kindTaken() {
      if (last) show(last);
    },
    key(input) {
      if (key?.(input)) return true;
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
