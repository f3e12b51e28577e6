import type { Board, Selection } from '../canvas/board.ts';
import type { SheetHandle } from '../canvas/sheet-handle.ts';
import { boundsOf, panBy, toScreen, toSheet, type Viewport } from '../drawing/viewport.ts';
import { project, type SheetId, type SheetPoint } from '../graph/sheet.ts';

/** The mounted sheets, addressed together. */
export interface SheetsView {
  /** Makes a sheet known; the answer takes it out again. */
  attach(handle: SheetHandle): () => void;
  /** Fits the scheme into every sheet. */
  fit(): void;
  /** Brings a place into view on every sheet, at the same scale where it fits. */
  reveal(place: Selection): void;
  /** Fits points into view on one sheet; nothing where it is not mounted. */
  show(sheet: SheetId, points: readonly SheetPoint[]): void;
  /** The middle of what a sheet shows, m; the origin where it is not mounted. */
  centre(sheet: SheetId): SheetPoint;
  /** How each mounted sheet lies in its element. */
  views(): Partial<Record<SheetId, Viewport>>;
}

/** Free pixels kept around a place that is brought into view. */
const MARGIN = 56;

export function createSheetsView(board: Board): SheetsView {
  const mounted = new Map<SheetId, SheetHandle>();
  /** Scale of each sheet when it was last fitted: while it stands, a sheet that changes size is fitted again. */
  const fittedScale = new Map<SheetId, number>();
  const fitOne = (handle: SheetHandle) => {
    handle.fit();
    fittedScale.set(handle.sheet, handle.viewport().scale);
  };
  const fitAll = () => {
    for (const handle of mounted.values()) fitOne(handle);
  };
  board.subscribe((state, before) => {
    if (state.schemeId !== before.schemeId) fitAll();
  });
  return {
    attach(handle) {
      mounted.set(handle.sheet, handle);
      fitOne(handle);
      const observer = new ResizeObserver(() => {
        if (handle.viewport().scale === fittedScale.get(handle.sheet)) fitOne(handle);
      });
      observer.observe(handle.element);
      return () => {
        observer.disconnect();
        if (mounted.get(handle.sheet) === handle) mounted.delete(handle.sheet);
      };
    },
    fit: fitAll,
    show: (sheet, points) => mounted.get(sheet)?.fit(points),
    centre(sheet) {
      const handle = mounted.get(sheet);
      if (!handle) return { u: 0, v: 0 };
      const { width, height } = handle.size();
      return toSheet({ x: width / 2, y: height / 2 }, handle.viewport());
    },
    views: () => Object.fromEntries([...mounted].map(([id, handle]) => [id, handle.viewport()])),
    reveal(place) {
      const { route } = board.getState().solution;
      const nodes = [...place.nodes];
      for (const id of place.segments) {
        const segment = route.segments.get(id);
        if (segment) nodes.push(segment.from, segment.to);
      }
      for (const handle of mounted.values()) {
        const points = nodes.flatMap((id) => {
          const node = route.nodes.get(id);
          return node ? [project(node.at, handle.sheet)] : [];
        });
        bringIntoView(handle, points);
      }
    },
  };
}

/** Moves the sheet no further than it takes; where the place is larger than the sheet, fits it. */
function bringIntoView(handle: SheetHandle, points: Parameters<typeof boundsOf>[0]): void {
  const bounds = boundsOf(points);
  if (!bounds) return;
  const view = handle.viewport();
  const { width, height } = handle.size();
  const topLeft = toScreen({ u: bounds.minU, v: bounds.maxV }, view);
  const bottomRight = toScreen({ u: bounds.maxU, v: bounds.minV }, view);
  const dx = shift(topLeft.x, bottomRight.x, width);
  const dy = shift(topLeft.y, bottomRight.y, height);
  if (dx === null || dy === null) handle.fit([...points]);
  else if (dx !== 0 || dy !== 0) handle.setViewport(panBy(view, dx, dy));
}

/** Pixels to move so that `low`-`high` lies within `size`; `null` where it cannot. */
function shift(low: number, high: number, size: number): number | null {
  if (high - low > size - 2 * MARGIN) return null;
  if (low < MARGIN) return MARGIN - low;
  if (high > size - MARGIN) return size - MARGIN - high;
  return 0;
}
