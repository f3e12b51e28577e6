import type { Draft } from 'immer';
import { type Box3, boundsOn, type Grip } from '../../../drawing/box-faces.ts';
import type { Job, Vec3 } from '../../../graph/document.ts';
import { resizeBlock, resizeExit } from '../../../graph/edits/index.ts';
import { depthOf, type SheetPoint, unproject } from '../../../graph/sheet.ts';
import { formatLength } from '../../../units/index.ts';
import { words } from '../../../words/index.ts';
import type { Item } from '../../selection.ts';
import { snapShapes } from '../show.ts';
import { type Phase, type PointerInput, putAway, type ToolContext } from '../tool.ts';
import { selectIdle } from './idle.ts';

/** The block or exit face that an item is. */
export function boxOf({ kind, id }: Item, job: Job): (Box3 & { readonly name: string }) | undefined {
  if (kind === 'block') return job.blocks.find((block) => block.id === id);
  return kind === 'exit' ? job.exits.find((exit) => exit.id === id) : undefined;
}

/** Gives a block or an exit face other corners; `false`, and no change, where no room is between them. */
export function resizeItem(job: Draft<Job>, { kind, id }: Item, min: Vec3, max: Vec3): boolean {
  return (kind === 'block' ? resizeBlock : resizeExit)(job, id, min, max);
}

/** A grip of a block or an exit face follows the pointer; the sides across from it stay. */
export function resizing(context: ToolContext, item: Item, grip: Grip, press: PointerInput): Phase {
  const { board } = context;
  const { job, units } = board.getState();
  const box = boxOf(item, job);
  const { sheet } = press;
  let corners: readonly [Vec3, Vec3] | null = null;

  const follow = (at: PointerInput) => {
    if (!box) return;
    const held = { u: grip.at.u + at.point.u - press.point.u, v: grip.at.v + at.point.v - press.point.v };
    const snapped = context.snapAt(
      { ...at, sheet, point: held },
      { exclude: new Set([item.id]), depth: depthOf(box.min, sheet) },
    );
    const end = {
      u: grip.u === 0 ? grip.at.u : snapped.point.u,
      v: grip.v === 0 ? grip.at.v : snapped.point.v,
    };
    const b = boundsOn(box, sheet);
    const low: SheetPoint = { u: grip.u < 0 ? end.u : b.minU, v: grip.v < 0 ? end.v : b.minV };
    const high: SheetPoint = { u: grip.u > 0 ? end.u : b.maxU, v: grip.v > 0 ? end.v : b.maxV };
    const made = [
      unproject(low, sheet, depthOf(box.min, sheet)),
      unproject(high, sheet, depthOf(box.max, sheet)),
    ] as const;
    corners = made;
    board.preview((draft) => void resizeItem(draft, item, ...made));
    const size = [Math.abs(high.u - low.u), Math.abs(high.v - low.v)];
    context.draw(sheet, [
      ...snapShapes(snapped),
      { kind: 'note', at: end, text: size.map((length) => formatLength(length, units)).join(' × ') },
    ]);
  };

  return {
    name: 'select/resizing',
    cursor:
      grip.u === 0
        ? 'ns-resize'
        : grip.v === 0
          ? 'ew-resize'
          : grip.u * grip.v > 0
            ? 'nesw-resize'
            : 'nwse-resize',
    pressed: true,
    leave: () => putAway(context),
    move(at) {
      if (at.sheet === sheet) follow(at);
      return undefined;
    },
    up(at) {
      if (corners && at.sheet === sheet) follow(at);
      const made = corners;
      if (made)
        board.dispatch(
          item.kind === 'block' ? words.edits.room.resizeBlock : words.edits.room.resizeExit,
          (draft) => void resizeItem(draft, item, ...made),
        );
      return selectIdle(context);
    },
    changed: () => selectIdle(context),
    cancel: () => selectIdle(context),
  };
}
