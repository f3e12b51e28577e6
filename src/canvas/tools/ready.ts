import type { ToolId } from '../board.ts';
import { capReady } from './cap.ts';
import { drawReady } from './draw/ready.ts';
import { hoodReady } from './hood.ts';
import { insertReady } from './insert.ts';
import { panReady } from './pan.ts';
import { selectIdle } from './select/idle.ts';
import type { Phase, ToolContext } from './tool.ts';
import { underlayReady } from './underlay/move.ts';
import { scaleReady } from './underlay/scale.ts';

const ready = {
  select: selectIdle,
  draw: drawReady,
  hood: hoodReady,
  cap: capReady,
  insert: insertReady,
  pan: panReady,
  underlay: underlayReady,
  scale: scaleReady,
} satisfies Record<ToolId, (context: ToolContext) => Phase>;

/** The phase that a tool starts in. */
export function readyPhase(context: ToolContext, tool: ToolId): Phase {
  return ready[tool](context);
}
