import type { Vec3 } from '../graph/document.ts';
import { memoise } from '../graph/memo.ts';
import { project, type SheetId, type SheetPoint } from '../graph/sheet.ts';
import type { BoardState } from './board.ts';
import { coloursOf } from './colouring.ts';
import { drawActive } from './draw-active.ts';
import { drawBackground } from './draw-background.ts';
import { arrowOf, drawDucts, inView } from './draw-ducts.ts';
import { drawFrame, frameBoxes } from './draw-frame.ts';
import { drawLabels } from './draw-labels.ts';
import { drawFlags, drawGhost, drawHandles, drawSelection, flagsOf, handleBoxes } from './draw-marks.ts';
import { drawUnderlays } from './draw-underlay.ts';
import { RULER } from './grid.ts';
import { type Box, type Busy, boxAround, placeLabels } from './label-place.ts';
import { labelsOf, type Name } from './labels.ts';
import { type Outline, outlineOf, type SheetLeg } from './outline.ts';
import { FONT, palettes } from './palette.ts';
import type { Pen } from './pen.ts';
import { pictures } from './pictures.ts';
import type { ActiveShape } from './sheet-handle.ts';
import type { Drawable } from './stroke.ts';
import { createMeasure } from './text-width.ts';
import {
  type Bounds,
  boundsOf,
  overlaps,
  type Size,
  toScreen,
  type Viewport,
  visibleBounds,
} from './viewport.ts';

export const layerNames = ['background', 'ducts', 'overlay', 'active'] as const;
export type LayerName = (typeof layerNames)[number];

/** Everything that one sheet shows, as functions of the board's state, its viewport and its size. */
export interface Painter {
  paint(layer: LayerName, pen: Pen, state: BoardState, view: Viewport, size: Size): void;
  setActive(shapes: readonly ActiveShape[]): void;
  /** What the drawing covers on the sheet, m. */
  extent(state: BoardState): Bounds;
  /** Forgets the widths of texts, after a font has arrived. */
  forgetText(): void;
}

export function createPainter(sheet: SheetId): Painter {
  const outline = (state: BoardState) => outlineFor(state.solution.route, state.live, sheet);
  let active: readonly ActiveShape[] = [];
  const widths = createMeasure();

  const paintOverlay = (pen: Pen, state: BoardState, view: Viewport, size: Size) => {
    const palette = palettes[state.theme];
    const { route } = state.solution;
    const { drawables, legs } = outline(state);
    const { fills, values } = coloursOf(state);
    if (state.ghost)
      drawGhost(
        pen,
        inView(outlineFor(state.ghost.solution.route, state.ghost.job, sheet).drawables, view, size),
        palette,
        view,
      );
    drawSelection(pen, inView(drawables, view, size), state.selection, state.hover, palette, view);
    const wanted = labelsOf({
      sheet,
      route,
      legs: legs.filter((leg) => isNear(leg, view, size)),
      values,
      by: state.colourBy,
      units: state.units,
      selection: state.selection,
      names: namesOf(state, sheet, drawables),
      view,
      measure: widths.with(pen),
    });
    const area: Box = { minX: RULER + 4, minY: RULER + 4, maxX: size.width - 4, maxY: size.height - 4 };
    const inline = drawables.filter(({ kind }) => kind === 'in-line');
    const bodies = inline.map(({ bounds }) => screenBox(bounds, view));
    const flags = flagsOf(state.solution.findings, route, sheet, bodies, view, size);
    const kept = [
      ...frameBoxes(size),
      ...handleBoxes(route, sheet, view),
      ...flags.map((flag) => flag.box),
      ...bodies,
      ...legs.flatMap((leg) => arrowOf(leg, view)?.box ?? []),
    ];
    const busy: Busy[] = [
      ...drawables.flatMap(({ kind, bounds }) => {
        const box = screenBox(bounds, view);
        return kind === 'hood' ? edgesOf(box) : [box];
      }),
      ...[...state.live.exits, ...state.live.blocks].flatMap((box) => edgesOf(blockBox(box, sheet, view))),
    ];
    drawLabels(pen, placeLabels(wanted, area, kept, busy), palette, fills);
    drawHandles(pen, route, sheet, state.selection, state.hover, palette, view);
    drawFlags(pen, flags, palette, `700 11px ${FONT}`);
    drawFrame(pen, state.units, palette, view, size);
  };

  return {
    paint(layer, pen, state, view, size) {
      const palette = palettes[state.theme];
      if (layer === 'background')
        drawBackground(pen, state.live, state.schemeId, sheet, palette, view, size, () => {
          const ratio = globalThis.devicePixelRatio ?? 1;
          const look = { pictures, palette, theme: state.theme, ratio };
          drawUnderlays(pen, state.live.underlays, sheet, look, view, size);
        });
      else if (layer === 'overlay') paintOverlay(pen, state, view, size);
      else if (layer === 'active') drawActive(pen, active, palette, view, size);
      else {
        const { drawables, legs } = outline(state);
        drawDucts(pen, drawables, legs, { palette, colours: coloursOf(state).fills }, view, size);
      }
    },
    setActive(shapes) {
      active = shapes;
    },
    extent(state) {
      return extentOf(outline(state), state, sheet);
    },
    forgetText: widths.forget,
  };
}

/** The layers that a change of the board's state touches. */
export function touched(state: BoardState, before: BoardState): readonly LayerName[] {
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
  if (behind) layers.push('background');
  if (
    state.solution !== before.solution ||
    state.speed !== before.speed ||
    state.colourBy !== before.colourBy ||
    job !== old
  )
    layers.push('ducts', 'overlay');
  else if (
    state.selection !== before.selection ||
    state.hover !== before.hover ||
    state.ghost !== before.ghost
  )
    layers.push('overlay');
  return layers;
}

function hoodPlaces(state: BoardState): string {
  const scheme = state.live.schemes.find((s) => s.id === state.schemeId);
  return (scheme?.nodes ?? []).flatMap((n) => (n.role === 'hood' ? n.at : [])).join();
}

/** Outlines are made anew only when the route or the document changes. */
const outlineFor = memoise(outlineOf);

/** Hoods by their plan, exits and blocks by their boxes. */
function namesOf({ live, schemeId }: BoardState, sheet: SheetId, drawables: readonly Drawable[]): Name[] {
  const scheme = live.schemes.find((s) => s.id === schemeId);
  const hoods = drawables.flatMap(({ kind, id, bounds: box }) => {
    const node = kind === 'hood' && scheme?.nodes.find((n) => n.id === id);
    const hood = node && live.hoods.find((h) => h.id === node.hood);
    return hood ? [{ id, text: hood.name, box, inside: false }] : [];
  });
  const boxes = [...live.exits, ...live.blocks].flatMap(({ id, name, min, max }) => {
    const box = boundsOf([project(min, sheet), project(max, sheet)]);
    return box ? [{ id, text: name, box, inside: true }] : [];
  });
  return [...hoods, ...boxes];
}

function screenBox(bounds: Bounds, view: Viewport): Box {
  const a = toScreen({ u: bounds.minU, v: bounds.maxV }, view);
  const b = toScreen({ u: bounds.maxU, v: bounds.minV }, view);
  return { minX: a.x, minY: a.y, maxX: b.x, maxY: b.y };
}

/** A leg that a label in view could belong to. */
function isNear(leg: SheetLeg, view: Viewport, size: Size): boolean {
  const bounds = boundsOf([leg.from, leg.to], leg.half);
  return bounds !== null && overlaps(bounds, visibleBounds(view, size, 80));
}

function blockBox({ min, max }: { min: Vec3; max: Vec3 }, sheet: SheetId, view: Viewport): Box {
  return boxAround(toScreen(project(min, sheet), view), toScreen(project(max, sheet), view));
}

/** The four sides of a box as thin boxes, for what text may stand in but had better not cross. */
function edgesOf({ minX, minY, maxX, maxY }: Box): Busy[] {
  const sides = [
    { minX, minY, maxX, maxY: minY + 3 },
    { minX, minY: maxY - 3, maxX, maxY },
    { minX, minY, maxX: minX + 3, maxY },
    { minX: maxX - 3, minY, maxX, maxY },
  ];
  return sides.map((side) => ({ ...side, edge: true }));
}

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
