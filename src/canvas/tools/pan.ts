import { panBy } from '../../drawing/viewport.ts';
import { dragged, type Phase, type PointerInput, type ToolContext } from './tool.ts';

/** The pan tool at rest: a press takes hold of the sheet. */
export function panReady(context: ToolContext): Phase {
  const self: Phase = {
    name: 'pan/ready',
    cursor: 'grab',
    down: (at) => (at.button === 0 ? panning(context, at, self) : undefined),
    cancel: () => self,
  };
  return self;
}

/**
 * The sheet follows the pointer from the place where it was taken hold of. Letting go or cancelling
 * goes back to `after`; cancelling puts the sheet back too.
 */
export function panning(context: ToolContext, press: PointerInput, after: Phase): Phase {
  const surface = context.surface(press.sheet);
  const start = surface?.viewport();
  return {
    name: 'pan/dragging',
    cursor: 'grabbing',
    pressed: true,
    move(at) {
      if (surface && start && dragged(press, at))
        surface.setViewport(panBy(start, at.screen.x - press.screen.x, at.screen.y - press.screen.y));
      return undefined;
    },
    up: () => after,
    cancel() {
      if (surface && start) surface.setViewport(start);
      return after;
    },
  };
}
