import type { LabelKind, Placed } from '../drawing/label-place.ts';
import { screenBox } from '../drawing/names.ts';
import { type Outline, outlineOf } from '../drawing/outline.ts';
import { createOutliner } from '../drawing/outline-cache.ts';
import { FONT, palettes } from '../drawing/palette.ts';
import { views } from '../drawing/view.ts';
import { type Bounds, boundsOf, type Size, type Viewport } from '../drawing/viewport.ts';
import { memoise } from '../graph/memo.ts';
import { project, type ScreenPoint, type SheetId, type SheetPoint } from '../graph/sheet.ts';
import type { BoardState } from './board.ts';
import { coloursOf } from './colouring.ts';
import { planeOf, standingsOf, strength } from './cut.ts';
import { drawActive } from './draw-active.ts';
import { dimensionBoxes, drawAnnotations, noteBoxes } from './draw-annotations.ts';
import { drawBackground } from './draw-background.ts';
import { type DuctPaint, drawDucts, inView } from './draw-ducts.ts';
import { drawMisfits, misfits } from './draw-fit.ts';
import { drawFrame, drawMore } from './draw-frame.ts';
import { drawLabels } from './draw-labels.ts';
import { drawFlags, drawGhost, drawHandles, drawSelection, flagsOf, handlesOf } from './draw-marks.ts';
import { drawUnderlays } from './draw-underlay.ts';
import type { Pen } from './pen.ts';
import { pictures } from './pictures.ts';
import { createPlacement } from './placement.ts';
import type { ActiveShape } from './sheet-handle.ts';
import { createMeasure } from './text-width.ts';

export const layerNames = ['background', 'ducts', 'overlay', 'active'] as const;
export type LayerName = (typeof layerNames)[number];

/** Everything that one sheet shows, as functions of the board's state, its viewport and its size. */
export interface Painter {
  paint(layer: LayerName, pen: Pen, state: BoardState, view: Viewport, size: Size): void;
  setActive(shapes: readonly ActiveShape[]): void;
  /** What the drawing covers on the sheet, m. */
  extent(state: BoardState): Bounds;
  /** The label drawn last at a place of the screen. */
  labelAt(point: ScreenPoint): Placed | null;
  /** The middle of a thing's label of a kind, where it was drawn, px. */
  labelOf(kind: LabelKind, id: string): ScreenPoint | null;
  /** Forgets the widths of texts, after a font has arrived. */
  forgetText(): void;
}

export function createPainter(sheet: SheetId): Painter {
  const outliner = createOutliner(views[sheet]);
  const outlineFor = memoise(outliner);
  const outline = (state: BoardState) => outlineFor(state.solution.route, state.live);
  const standings = (state: BoardState) => {
    const plane = planeOf(state, sheet);
    return plane === null ? null : standingsOf(state.solution.route, sheet, plane);
  };
  let active: readonly ActiveShape[] = [];
  let placed: readonly Placed[] = [];
  const widths = createMeasure();
  let placement = createPlacement(sheet, outline);

  const paintOverlay = (pen: Pen, state: BoardState, view: Viewport, size: Size) => {
    const palette = palettes[state.theme];
    const { route } = state.solution;
    const { drawables } = outline(state);
    if (state.ghost)
      drawGhost(
        pen,
        inView(ghostOutline(state.ghost.solution.route, state.ghost.job, sheet).drawables, view, size),
        palette,
        view,
      );
    const misfit = misfits(state.solution.findings, drawables, state.live.blocks);
    drawMisfits(pen, misfit, sheet, palette, view);
    drawSelection(pen, inView(drawables, view, size), state.selection, state.hover, palette, view);
    const handles = handlesOf(route, sheet, state.selection, state.hover, view, size);
    const inline = inView(drawables, view, size).filter(({ kind }) => kind === 'in-line');
    const bodies = inline.map(({ bounds }) => screenBox(bounds, view));
    const flags = flagsOf(state.solution.findings, route, sheet, bodies, view, size);
    const measure = widths.with(pen);
    const fixed = [
      ...flags.map((flag) => flag.box),
      ...bodies,
      ...noteBoxes(state, sheet, view),
      ...dimensionBoxes(state, sheet, view, measure),
    ];
    const labels = placement(state, view, size, measure, fixed);
    placed = labels.placed;
    drawLabels(pen, placed, palette, coloursOf(state).fills);
    drawAnnotations(pen, state, sheet, palette, view);
    drawHandles(pen, handles, route, state.selection, state.hover, palette);
    drawFlags(pen, flags, palette, `700 11px ${FONT}`);
    drawFrame(pen, state.units, palette, view, size);
    drawMore(pen, labels.more, palette, size);
  };

  return {
    paint(layer, pen, state, view, size) {
      const palette = palettes[state.theme];
      if (layer === 'background')
        drawBackground(
          pen,
          state.live,
          state.schemeId,
          sheet,
          palette,
          view,
          size,
          () => {
            const ratio = globalThis.devicePixelRatio ?? 1;
            const look = { pictures, palette, theme: state.theme, ratio };
            drawUnderlays(pen, state.live.underlays, sheet, look, view, size);
          },
          planeOf(state, sheet),
        );
      else if (layer === 'overlay') paintOverlay(pen, state, view, size);
      else if (layer === 'active') drawActive(pen, active, palette, view, size);
      else {
        const stands = standings(state);
        const paint: DuctPaint = {
          palette,
          colours: coloursOf(state).fills,
          ...(stands && { strength: (item) => strength[stands.of(item)] }),
        };
        drawDucts(pen, outline(state), paint, view, size);
      }
    },
    setActive(shapes) {
      active = shapes;
    },
    extent(state) {
      return extentOf(outline(state), state, sheet);
    },
    labelAt: ({ x, y }) =>
      placed.find(({ box }) => x >= box.minX && x <= box.maxX && y >= box.minY && y <= box.maxY) ?? null,
    labelOf: (kind, id) => {
      const box = placed.find((label) => label.kind === kind && label.id === id)?.box;
      return box ? { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 } : null;
    },
    forgetText() {
      widths.forget();
      placement = createPlacement(sheet, outline);
    },
  };
}

/** The layers of a sheet that a change of the board's state touches. */
export function touched(state: BoardState, before: BoardState, sheet: SheetId): readonly LayerName[] {
  if (state.theme !== before.theme || state.schemeId !== before.schemeId || state.units !== before.units)
    return layerNames;
  const layers: LayerName[] = [];
  const [job, old] = [state.live, before.live];
  const behind =
    job.blocks !== old.blocks ||
    job.exits !== old.exits ||
    job.kitchen !== old.kitchen ||
    job.underlays !== old.underlays ||
    hoodPlaces(state) !== hoodPlaces(before);
  const cut = planeOf(state, sheet) !== planeOf(before, sheet);
  if (behind || cut) layers.push('background');
  if (
    state.solution !== before.solution ||
    state.speed !== before.speed ||
    state.colourBy !== before.colourBy ||
    job !== old ||
    cut
  )
    layers.push('ducts', 'overlay');
  else if (
    state.selection !== before.selection ||
    state.hover !== before.hover ||
    state.ghost !== before.ghost ||
    (sheet !== 'floor' && state.workingHeight !== before.workingHeight)
  )
    layers.push('overlay');
  return layers;
}

function hoodPlaces(state: BoardState): string {
  const scheme = state.live.schemes.find((s) => s.id === state.schemeId);
  return (scheme?.nodes ?? []).flatMap((n) => (n.role === 'hood' ? n.at : [])).join();
}

const ghostOutline = memoise(outlineOf);

function extentOf(outline: Outline, state: BoardState, sheet: SheetId): Bounds {
  const points: SheetPoint[] = outline.drawables.flatMap(({ bounds }) => [
    { u: bounds.minU, v: bounds.minV },
    { u: bounds.maxU, v: bounds.maxV },
  ]);
  for (const node of state.solution.route.nodes.values()) points.push(project(node.at, sheet));
  if (sheet !== 'floor') {
    const u = points[0]?.u ?? 0;
    points.push({ u, v: 0 }, { u, v: state.live.kitchen.ceilingHeight });
  }
  const bounds = boundsOf(points);
  if (bounds && bounds.maxU - bounds.minU > 0.3 && bounds.maxV - bounds.minV > 0.3) return bounds;
  const at = { u: bounds?.minU ?? 0, v: bounds?.minV ?? 0 };
  return { minU: at.u - 1.2, minV: at.v - 0.6, maxU: at.u + 3, maxV: at.v + 2.6 };
}
