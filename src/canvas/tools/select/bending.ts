import { setRadius } from '../../../graph/edits/index.ts';
import { placesOf } from '../../../graph/places.ts';
import { largestRadius } from '../../../graph/reshape.ts';
import type { SheetId } from '../../../graph/sheet.ts';
import {
  formatFlow,
  formatLength,
  formatNumber,
  formatPressure,
  type Parsed,
  parseLength,
  parseNumber,
  type System,
} from '../../../units/index.ts';
import { words } from '../../../words/index.ts';
import { type BendGrip, bendGrip } from '../../bend-grip.ts';
import { actionOf } from '../keys.ts';
import { type KeyInput, type Phase, type PointerInput, putAway, type ToolContext } from '../tool.ts';
import { following, opening } from '../typed-fields.ts';
import { selectIdle } from './idle.ts';

const says = words.tools.bending;

/** A dragged radius comes in steps of this much r/D, but for Alt. */
const STEP = 0.05;
/** Straight duct shorter than this, m, is none. */
const NONE_LEFT = 1e-6;

/**
 * The arc of a bend follows the pointer, or takes a typed radius (`12"`, `300 mm`) or ratio (`1.5D`). With
 * no press it is typed alone. The radius, the loss and the air delivered are those of the changed drawing.
 */
export function bending(
  context: ToolContext,
  grip: BendGrip,
  sheet: SheetId,
  press: PointerInput | null,
): Phase {
  const { board } = context;
  const { schemeId, units, solution: before } = board.getState();
  const { node } = grip;
  let wanted = grip.radius;
  let pointer = press;
  let text = '';

  const wish = (): Parsed => {
    if (text !== '') return parseRadius(text, grip.side, units);
    if (!pointer || !press) return { ok: true, value: grip.radius };
    const { inward, pace } = grip;
    const pulled =
      (pointer.point.u - press.point.u) * inward.u + (pointer.point.v - press.point.v) * inward.v;
    const radius = Math.max(0.01 * grip.side, grip.radius + pulled / pace);
    if (pointer.modifiers.alt || pulled === 0) return { ok: true, value: radius };
    return { ok: true, value: Math.max(STEP, Math.round(radius / grip.side / STEP) * STEP) * grip.side };
  };

  const recipe = (radius: number) => (job: Parameters<typeof setRadius>[0]) =>
    void setRadius(job, schemeId, node, radius);

  const show = () => {
    const asked = wish();
    if (asked.ok) {
      wanted = asked.value;
      board.preview(wanted === grip.radius ? null : recipe(wanted));
    } else board.preview(null);
    const now = board.getState();
    const seen = bendGrip(
      now.solution.route,
      { nodes: [node], segments: [] },
      sheet,
      context.surface(sheet)?.viewport().scale ?? 100,
    );
    const at = seen?.at ?? grip.at;
    const why = asked.ok ? limit() : asked.message;
    context.draw(sheet, [
      { kind: 'node', at },
      {
        kind: 'note',
        at,
        text: text === '' ? figures() : asked.ok ? `${text}|  →  ${figures()}` : `${text}|  ?`,
        strong: text !== '',
      },
      ...(why ? [{ kind: 'snap', at, reason: why, bare: true } as const] : []),
    ]);
  };

  /** "r 12"  1.5 D  0.05 in w.g.  266 cfm", of what is on the sheet now. */
  const figures = (): string => {
    const { solution, speed } = board.getState();
    const bend = solution.route.nodes.get(node)?.bend;
    const outcome = solution.speeds[speed]?.outcome;
    if (!bend) return '';
    const parts = [
      says.radius(formatLength(bend.radius, units, { inchesOnly: true })),
      says.ratio(formatNumber(bend.radiusRatio, 2)),
    ];
    if (outcome?.solved) {
      const loss = outcome.fittings.find((fitting) => fitting.at === node && fitting.kind === 'bend')?.loss;
      if (loss !== undefined) parts.push(says.loses(formatPressure(loss, units)));
      parts.push(formatFlow(outcome.flow, units));
    }
    return parts.join('  ');
  };

  /** Why the arc is not as it was asked for; `null` where it is. */
  const limit = (): string | null => {
    const { route } = board.getState().solution;
    const bend = route.nodes.get(node)?.bend;
    if (!bend || Math.abs(bend.radius - wanted) < 1e-6) return null;
    if (bend.radius > wanted) return says.tightest;
    const largest = largestRadius(before.route, node);
    if (largest !== null && largest >= 10 * grip.side - 1e-6) return says.largest;
    const full = [bend.upstream, bend.downstream].find(
      (id) => (route.segments.get(id)?.straight ?? 1) < NONE_LEFT,
    );
    return full ? says.noStraightOn(placesOf(route).leg(full)) : says.noStraight;
  };

  const commit = (): Phase => {
    const asked = wish();
    if (!asked.ok) {
      context.announce(asked.message);
      show();
      return self;
    }
    board.dispatch(words.edits.route.reshapeBend, recipe(asked.value));
    const why = limit();
    context.announce(`${figures()}${why ? `; ${why}` : ''}.`);
    return selectIdle(context);
  };

  const self: Phase = {
    name: 'select/bending',
    cursor: 'move',
    get pressed() {
      return press !== null;
    },
    enter: show,
    leave: () => putAway(context),
    move(at) {
      if (press && at.sheet === sheet) {
        pointer = at;
        show();
      }
      return undefined;
    },
    down: () => (press ? undefined : selectIdle(context)),
    up(at) {
      if (!press) return undefined;
      if (at.sheet === sheet) pointer = at;
      const asked = wish();
      return asked.ok && Math.abs(asked.value - grip.radius) < 1e-9 ? selectIdle(context) : commit();
    },
    key(input: KeyInput) {
      const action = actionOf(input, 'type');
      if (action === 'type.commit') return commit();
      if (action === 'type.cancel') return selectIdle(context);
      if (action === 'type.erase' && text !== '') text = text.slice(0, -1);
      else if (!input.modifiers.mod && (text === '' ? opening : following).test(input.key)) text += input.key;
      else return false;
      show();
      return true;
    },
    changed: () => selectIdle(context),
    cancel: () => selectIdle(context),
  };
  return self;
}

/** A radius in metres from a length, or from a ratio to the diameter: `1.5D`, `1.5 r/D`. */
export function parseRadius(text: string, side: number, units: System): Parsed {
  const ratio = /^(.*?)\s*(?:×\s*)?(?:r\s*\/\s*)?d\s*$/i.exec(text);
  if (ratio) {
    const read = parseNumber(ratio[1] ?? '');
    if (read.ok && read.value > 0) return { ok: true, value: read.value * side };
    return { ok: false, message: says.ratioRefused };
  }
  const length = parseLength(text, units);
  if (length.ok && length.value <= 0) return { ok: false, message: says.radiusRefused };
  return length;
}
