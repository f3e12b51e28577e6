import type { ToolId } from '../board.ts';
import { blockReady, exitReady } from './box/ready.ts';
import { capReady } from './cap.ts';
import { dimensionReady } from './dimension/ready.ts';
import { drawReady } from './draw/ready.ts';
import { hoodReady } from './hood.ts';
import { insertReady } from './insert.ts';
import { joinReady } from './join/ready.ts';
import { measureReady } from './measure.ts';
import { noteReady } from './note.ts';
import { panReady } from './pan.ts';
import { partReady } from './part.ts';
import { selectIdle } from './select/idle.ts';
import { splitReady } from './split.ts';
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
  part: partReady,
  split: splitReady,
  join: joinReady,
  block: blockReady,
  exit: exitReady,
  dimension: dimensionReady,
  note: noteReady,
  measure: (context) => measureReady(context),
  underlay: underlayReady,
  scale: scaleReady,
} satisfies Record<ToolId, (context: ToolContext) => Phase>;

/** The phase that a tool starts in. */
export function readyPhase(context: ToolContext, tool: ToolId): Phase {
  return ready[tool](context);
}
