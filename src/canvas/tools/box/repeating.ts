import { boundsOn } from '../../../drawing/box-faces.ts';
import { mostRepeated, repeatBlock, usualSpacing } from '../../../graph/edits/index.ts';
import { type SheetId, type SheetPoint, unproject } from '../../../graph/sheet.ts';
import { formatLength } from '../../../units/index.ts';
import { words } from '../../../words/index.ts';
import { joined, selectionOf } from '../../selection.ts';
import { actionOf } from '../keys.ts';
import { selectIdle } from '../select/idle.ts';
import { type Phase, type PointerInput, putAway, type ToolContext } from '../tool.ts';
import { blankFields, isBlank, shownField, sizeIn, typedKey } from '../typed-fields.ts';

const says = words.tools.repeat;

/** A block is repeated away from itself towards the pointer: how many more, and how far from centre to centre. */
export function repeating(context: ToolContext, id: string, sheet: SheetId): Phase {
  const { board } = context;
  let pointer: PointerInput | null = null;
  let fields = blankFields(2);
  let pressed = false;

  const look = () => {
    const { job, units } = board.getState();
    const block = job.blocks.find((each) => each.id === id);
    if (!block) return null;
    const size = sizeIn(fields, 1, units);
    const { minU, minV, maxU, maxV } = boundsOn(block, sheet);
    const middle = { u: (minU + maxU) / 2, v: (minV + maxV) / 2 };
    const aim: SheetPoint = pointer
      ? { u: pointer.point.u - middle.u, v: pointer.point.v - middle.v }
      : narrow(maxU - minU, maxV - minV);
    const level = Math.abs(aim.u) >= Math.abs(aim.v);
    const reach = level ? aim.u : aim.v;
    const own = level ? maxU - minU : maxV - minV;
    const usual = Math.max(usualSpacing[units], own);
    const spacing = size.kind === 'value' ? size.value : usual;
    const typed = countIn(fields.texts[0] ?? '');
    const drawn = pointer ? Math.min(mostRepeated, Math.floor(Math.abs(reach) / spacing + 0.25)) : 0;
    const step = Math.sign(reach || 1) * spacing;
    const delta = unproject(level ? { u: step, v: 0 } : { u: 0, v: step }, sheet, 0);
    const why = typed === 'bad' ? says.howMany(mostRepeated) : size.kind === 'bad' ? size.message : null;
    return { block, middle, delta, spacing, units, count: typeof typed === 'number' ? typed : drawn, why };
  };

  const show = () => {
    const seen = look();
    if (!seen) return;
    const { count, delta, spacing, units, middle, why } = seen;
    board.preview(count > 0 && !why ? (job) => void repeatBlock(job, id, count, delta) : null);
    context.announce(why ?? '');
    const more = says.more(
      shownField(fields, 0, String(count)),
      shownField(fields, 1, formatLength(spacing, units, { inchesOnly: true })),
    );
    const text = why ? `${more}  ?` : more;
    context.draw(sheet, [{ kind: 'note', at: pointer?.point ?? middle, text, strong: !isBlank(fields) }]);
  };

  const done = (): Phase => {
    board.set({ tool: 'select' });
    return selectIdle(context);
  };

  const commit = (): Phase => {
    const seen = look();
    if (seen?.why) {
      context.announce(seen.why);
      return self;
    }
    if (seen && seen.count > 0) {
      let made: readonly string[] = [];
      board.dispatch(
        words.edits.room.repeat(seen.block.name.toLowerCase() || words.tools.kinds[seen.block.kind]),
        (job) => {
          made = repeatBlock(job, id, seen.count, seen.delta);
        },
      );
      const copies = selectionOf((kind) => (kind === 'block' ? made : []));
      board.set({ selection: joined(board.getState().selection, copies) });
      context.announce(says.done(made.length));
    }
    return done();
  };

  const self: Phase = {
    name: 'box/repeating',
    cursor: 'copy',
    get pressed() {
      return pressed;
    },
    enter: show,
    leave: () => putAway(context),
    move(at) {
      if (at.sheet !== sheet) return undefined;
      pointer = at;
      show();
      return undefined;
    },
    down(at) {
      pressed = at.button === 0 && at.sheet === sheet;
      return undefined;
    },
    up(at) {
      if (!pressed) return undefined;
      pressed = false;
      pointer = at;
      return commit();
    },
    key(input) {
      const action = actionOf(input, 'type');
      if (action === 'type.commit') return commit();
      if (action === 'type.cancel') return done();
      const typed = typedKey(fields, input);
      if (!typed) return false;
      fields = typed;
      show();
      return true;
    },
    changed: () => (look() ? undefined : done()),
    cancel: done,
  };
  return self;
}

/** A typed number of copies; blank for none typed. */
function countIn(text: string): number | null | 'bad' {
  if (text.trim() === '') return null;
  const count = Number(text.trim());
  return Number.isInteger(count) && count > 0 && count <= mostRepeated ? count : 'bad';
}

/** Away from a long block's side rather than its end, until the pointer says. */
function narrow(width: number, height: number): SheetPoint {
  return width <= height ? { u: 1, v: 0 } : { u: 0, v: 1 };
}
