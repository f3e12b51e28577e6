import type { UnitSystem, Vec3 } from '../../../graph/document.ts';
import { project, type SheetId, type SheetPoint } from '../../../graph/sheet.ts';
import type { Snap } from '../../../graph/snap.ts';
import { angleBetween, subtract } from '../../../graph/vector.ts';
import { formatAngle, formatLength } from '../../../units/index.ts';
import { words } from '../../../words/index.ts';
import type { ActiveShape } from '../../sheet-handle.ts';
import { snapShapes } from '../show.ts';
import type { LegResult } from './leg.ts';
import type { Typing } from './typing.ts';

const says = words.tools.draw;

export interface LegView {
  readonly from: Vec3;
  readonly sheet: SheetId;
  readonly result: LegResult;
  readonly typing: Typing;
  readonly snapped: Snap | null;
  /** Direction of the leg before, for the angle of the turn. */
  readonly onward: Vec3 | null;
  /** What the click would do besides drawing: "ends with a cap at north wall". */
  readonly ending: string | null;
  readonly units: UnitSystem;
}

/** Turns smaller than this, degrees, are not worth a word. */
const STRAIGHT = 0.05;

/** What the leg in hand shows: its length, its angles, what is typed, and the snap. */
export function legShapes(view: LegView): ActiveShape[] {
  const { from, sheet, result, snapped } = view;
  const start = project(from, sheet);
  const shapes: ActiveShape[] = [{ kind: 'node', at: start }];
  const typed = isTyped(view.typing);
  if (!result.ok && result.state === 'waiting' && !typed) return shapes;
  const end = result.ok ? project(result.leg.to, sheet) : null;
  if (end) shapes.push({ kind: 'node', at: end });
  if (snapped && (end ? samePoint(snapped.point, end) : !typed)) shapes.push(...snapShapes(snapped));
  const at = end ?? (typed || !snapped ? start : snapped.point);
  shapes.push({ kind: 'note', at, text: legText(view), strong: typed });
  return shapes;
}

/** The line beside the pointer: fields being typed carry a caret; what cannot be read is queried. */
export function legText({ result, typing, onward, ending, units }: LegView): string {
  const typed = isTyped(typing) ? fields(typing) : null;
  if (!result.ok) {
    if (typed === null) return result.why;
    return { waiting: typed, unreadable: `${typed}  ?`, refused: `${typed}  ${result.why}` }[result.state];
  }
  if (typed !== null && typing.rise !== 0) return typed;
  const { leg } = result;
  const turn = onward ? angleBetween(onward, subtract(leg.to, leg.from)) : 0;
  const parts = [
    typed ?? formatLength(leg.length, units),
    leg.angle !== null && typing.field === 'length' && typing.angle === '' ? formatAngle(leg.angle) : null,
    turn > STRAIGHT ? says.turn(formatAngle(turn)) : null,
    ending,
  ];
  return parts.filter((part) => part !== null).join('  ');
}

/** The fields as they stand, the one being typed into with a caret where it is empty. */
export function fields(typing: Typing): string {
  const field = (name: 'length' | 'angle', before: string, after: string) =>
    typing.field === name
      ? `${before}${typing[name] || '__'}${after}`
      : typing[name] && `${before}${typing[name]}${after}`;
  if (typing.rise !== 0) return `${typing.rise > 0 ? says.up : says.down} ${typing.length || '__'}`;
  return [field('length', '', ''), field('angle', `${says.at} `, '°')].filter(Boolean).join(' ');
}

/** True once a key has been typed for the leg. */
export function isTyped(typing: Typing): boolean {
  return typing.length !== '' || typing.angle !== '' || typing.rise !== 0 || typing.field === 'angle';
}

function samePoint(a: SheetPoint, b: SheetPoint): boolean {
  return Math.hypot(a.u - b.u, a.v - b.v) < 1e-9;
}
