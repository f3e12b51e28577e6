import { type Box3, boundsOn, isFaceOn } from '../../drawing/box-faces.ts';
import { dimensionShape } from '../../drawing/dimension-lines.ts';
import { noteSize } from '../../drawing/note-box.ts';
import { schemeOf } from '../../graph/infer.ts';
import { project, type SheetId, type SheetPoint, unproject } from '../../graph/sheet.ts';
import { hitTest, nearestOnSheet, spatialIndex } from '../../graph/spatial.ts';
import { distance, lerp } from '../../graph/vector.ts';
import type { BoardState } from '../board.ts';
import { type ItemKind, partId } from '../selection.ts';
import { placeOf, type Under } from './pick.ts';

interface Ask {
  readonly sheet: SheetId;
  readonly point: SheetPoint;
  /** m on the sheet. */
  readonly tolerance: number;
  /** Pixels a metre. */
  readonly scale: number;
}

/**
 * Everything under a pointer, the best first: nodes, parts in line, notes, dimensions, duct, then blocks
 * and exit faces, the smaller before the larger. A wall or roof seen face on is met at its edges alone.
 */
export function under(state: BoardState, ask: Ask): Under[] {
  const scheme = schemeOf(state.job, state.schemeId);
  const index = spatialIndex(scheme, ask.sheet);
  const run = hitTest(index, ask.point, ask.tolerance).map(
    (hit): Under => ({
      kind: hit.kind,
      id: hit.id,
      at: placeOf(hit, index) ?? unproject(ask.point, ask.sheet, hit.depth),
    }),
  );
  return [
    ...run.filter(({ kind }) => kind === 'node'),
    ...parts(state, ask),
    ...notes(state, ask),
    ...dimensions(state, ask),
    ...run.filter(({ kind }) => kind === 'segment'),
    ...boxes('block', state.job.blocks, ask),
    ...boxes('exit', state.job.exits, ask),
  ];
}

function parts(state: BoardState, { sheet, point, tolerance }: Ask): Under[] {
  const scheme = schemeOf(state.job, state.schemeId);
  const index = spatialIndex(scheme, sheet);
  return scheme.segments.flatMap(({ id, fittings }) => {
    const entry = index.segments.get(id);
    if (!entry || !fittings) return [];
    const [from, to] = [entry.from.node.at, entry.to.node.at];
    const length = distance(from, to);
    if (Math.hypot(entry.from.point.u - entry.to.point.u, entry.from.point.v - entry.to.point.v) < 1e-6)
      return [];
    return fittings.flatMap((part, place): Under[] => {
      const at = lerp(from, to, length > 0 ? Math.min(1, part.at / length) : 0);
      const seen = project(at, sheet);
      const reach = Math.max(tolerance, entry.halfWidth);
      const off = Math.hypot(seen.u - point.u, seen.v - point.v);
      return off <= reach ? [{ kind: 'part', id: partId(id, place), at }] : [];
    });
  });
}

function notes({ job }: BoardState, { sheet, point, scale, tolerance }: Ask): Under[] {
  return (job.sheetNotes ?? []).flatMap((note): Under[] => {
    if (note.sheet !== sheet) return [];
    const size = noteSize(note.text);
    const [u, v] = note.at;
    const inside =
      point.u >= u - tolerance &&
      point.u <= u + size.width / scale &&
      point.v <= v + tolerance &&
      point.v >= v - size.height / scale;
    return inside ? [{ kind: 'note', id: note.id, at: unproject({ u, v }, sheet, 0) }] : [];
  });
}

function dimensions(state: BoardState, { sheet, point, tolerance }: Ask): Under[] {
  const scheme = schemeOf(state.job, state.schemeId);
  return (scheme.dimensions ?? []).flatMap((dimension): Under[] => {
    const shape = dimension.sheet === sheet ? dimensionShape(dimension, scheme, state.job) : null;
    if (!shape || nearestOnSheet(point, ...shape.line).distance > tolerance) return [];
    return [{ kind: 'dimension', id: dimension.id, at: unproject(point, sheet, 0) }];
  });
}

function boxes(
  kind: ItemKind & ('block' | 'exit'),
  all: readonly (Box3 & { readonly id: string })[],
  { sheet, point, tolerance }: Ask,
): Under[] {
  const area = (box: Box3) => {
    const { minU, minV, maxU, maxV } = boundsOn(box, sheet);
    return (maxU - minU) * (maxV - minV);
  };
  return all
    .filter((box) => {
      const inside = depthInside(box, sheet, point);
      return inside >= -tolerance && (!isFaceOn(box, sheet) || inside <= tolerance);
    })
    .sort((a, b) => area(a) - area(b))
    .map((box) => ({ kind, id: box.id, at: unproject(point, sheet, 0) }));
}

/** How far inside a box a point is, m from its nearest edge; below 0 outside. */
function depthInside(box: Box3, sheet: SheetId, { u, v }: SheetPoint): number {
  const { minU, minV, maxU, maxV } = boundsOn(box, sheet);
  return Math.min(u - minU, maxU - u, v - minV, maxV - v);
}
