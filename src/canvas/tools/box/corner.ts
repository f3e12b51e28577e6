import type { Draft } from 'immer';
import type { Block, ExitFace, Job, Vec3 } from '../../../graph/document.ts';
import { addBlock, addExit } from '../../../graph/edits/index.ts';
import type { SheetPoint } from '../../../graph/sheet.ts';
import { formatLength } from '../../../units/index.ts';
import { words } from '../../../words/index.ts';
import { only } from '../../selection.ts';
import { restingDepth } from '../depth.ts';
import { actionOf } from '../keys.ts';
import { snapShapes } from '../show.ts';
import { dragged, type Phase, type PointerInput, putAway, type ToolContext } from '../tool.ts';
import { boxInHand } from '../tool-kinds.ts';
import { blankFields, isBlank, shownField, sizeIn, typedKey } from '../typed-fields.ts';
import type { BoxKind } from './kinds.ts';
import { boxReady } from './ready.ts';
import { repeating } from './repeating.ts';
import { boxFrom } from './shape.ts';

const says = words.tools.box;

export interface BoxStart {
  readonly what: BoxKind['what'];
  readonly from: SheetPoint;
  readonly press: PointerInput;
}

/**
 * One corner is taken: the box follows the pointer, its three sizes can be typed, a click puts it there. It is of the
 * kind that is in hand when it is put there.
 */
export function boxCorner(context: ToolContext, { what, from, press }: BoxStart): Phase {
  const { board } = context;
  const { sheet } = press;
  let pointer = press;
  let pressed: PointerInput | null = press;
  let fields = blankFields(3);

  const ready = () => boxReady(context, what);

  const look = () => {
    const state = board.getState();
    const kind = boxInHand(state, what);
    const sizes = [0, 1, 2].map((i) => sizeIn(fields, i, state.units));
    const bad = sizes.find((size) => size.kind === 'bad');
    const snapped = context.snapAt(pointer);
    const typed = sizes.map((size) => (size.kind === 'value' ? size.value : null)) as [
      number | null,
      number | null,
      number | null,
    ];
    const depth = restingDepth(state, sheet);
    const box = bad ? null : boxFrom({ kind, job: state.job, sheet, from, to: snapped.point, typed, depth });
    return { state, kind, snapped, box, why: bad?.kind === 'bad' ? bad.message : null };
  };

  const show = () => {
    const { state, kind, snapped, box, why } = look();
    board.preview(box ? (job) => void addBox(job, kind, box) : null);
    const size = (axis: 0 | 1 | 2) =>
      box ? formatLength(Math.abs(box[1][axis] - box[0][axis]), state.units) : '–';
    const axes = { floor: [0, 1, 2], 'section-x': [0, 2, 1], 'section-y': [1, 2, 0] }[sheet] as [
      0 | 1 | 2,
      0 | 1 | 2,
      0 | 1 | 2,
    ];
    const sizes = axes.map((axis, i) => shownField(fields, i, size(axis))).join(' × ');
    const text = `${sheet === 'floor' ? says.high(sizes) : says.deep(sizes)}${why ? '  ?' : ''}`;
    context.draw(sheet, [
      ...(isBlank(fields) ? snapShapes(snapped) : []),
      { kind: 'note', at: snapped.point, text, strong: !isBlank(fields) },
    ]);
    context.announce(why ?? '');
  };

  const commit = (): Phase | undefined => {
    const { kind, box, why } = look();
    if (!box) {
      context.announce(why ?? says.typeSizes);
      return undefined;
    }
    let id: string | null = null;
    board.dispatch(words.edits.room.draw(kind.name.toLowerCase()), (job) => {
      id = addBox(job, kind, box);
    });
    if (id === null) return ready();
    board.set({ selection: only({ kind: kind.what, id }) });
    context.announce(says.drawn(kind.name));
    if (kind.kind === 'joist') return repeating(context, id, sheet);
    board.set({ tool: 'select' });
    return undefined;
  };

  return {
    name: 'box/corner',
    cursor: 'crosshair',
    get pressed() {
      return pressed !== null;
    },
    enter: show,
    kindTaken: show,
    leave: () => putAway(context),
    move(at) {
      if (at.sheet !== sheet) return undefined;
      pointer = at;
      show();
      return undefined;
    },
    down(at) {
      if (at.button === 0 && at.sheet === sheet) {
        pressed = at;
        pointer = at;
      }
      return undefined;
    },
    up(at) {
      const begun = pressed;
      pressed = null;
      if (!begun || at.sheet !== sheet || (begun === press && !dragged(press, at))) return undefined;
      pointer = at;
      return commit();
    },
    key(input) {
      const action = actionOf(input, 'type');
      if (action === 'type.commit') return commit() ?? true;
      if (action === 'type.cancel') return ready();
      const typed = typedKey(fields, input);
      if (!typed) return false;
      fields = typed;
      show();
      return true;
    },
    changed: ready,
    cancel: ready,
  };
}

function addBox(
  job: Draft<Job>,
  { what, kind, name }: BoxKind,
  [min, max]: readonly [Vec3, Vec3],
): string | null {
  if (what === 'exit') return addExit(job, { name, kind: kind as ExitFace['kind'], min, max });
  return addBlock(job, { name, kind: kind as Block['kind'], min, max });
}
