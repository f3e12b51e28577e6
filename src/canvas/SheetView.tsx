import type Konva from 'konva/lib/Core.js';
import { useCallback, useEffect, useLayoutEffect, useMemo, useRef, useSyncExternalStore } from 'react';
import { Layer, Shape, Stage } from 'react-konva/lib/ReactKonvaCore.js';
import { RULER } from '../drawing/grid.ts';
import { FONT, MIN_TEXT } from '../drawing/palette.ts';
import { sheetTitles } from '../drawing/view.ts';
import {
  type Bounds,
  boundsOf,
  fit as fitted,
  panBy,
  type Size,
  toSheet,
  type Viewport,
} from '../drawing/viewport.ts';
import type { SheetId, SheetPoint } from '../graph/sheet.ts';
import type { Board, BoardState } from './board.ts';
import { createPainter, type LayerName, layerNames, touched } from './painter.ts';
import { pictures } from './pictures.ts';
import type { SheetHandle } from './sheet-handle.ts';
import { useWholePixels } from './whole-pixels.ts';
import './canvas.css';
import { words } from '../words/index.ts';

const says = words.sheets.frame;

/** Room left for dimensions around a drawing that is fitted into view, px: across they are longer than high. */
const MARGIN = { x: 84, y: 72 };

export interface SheetViewProps {
  readonly board: Board;
  readonly sheet: SheetId;
  /** Called once the sheet can be drawn on; what it returns is called when the sheet goes. */
  readonly onMount?: (handle: SheetHandle) => (() => void) | undefined;
  /** Hears how the sheet lies whenever that changes. */
  readonly onView?: (view: Viewport, size: Size) => void;
}

/**
 * One sheet: four layers over one another, drawn by a painter. It follows the board by itself and
 * draws only the layers that a change touches, at most once a frame; an idle sheet draws nothing.
 * While a gesture previews, the ducts and labels are drawn again with it, because every frame has new
 * numbers and colours; the background is not.
 */
export function SheetView({ board, sheet, onMount, onView }: SheetViewProps) {
  const frame = useRef<HTMLDivElement>(null);
  const inner = useRef<HTMLDivElement>(null);
  const layers = useRef(new Map<LayerName, Konva.Layer>());
  const painter = useMemo(() => createPainter(sheet), [sheet]);
  const view = useRef<Viewport | null>(null);
  const size = useRef<Size>({ width: 0, height: 0 });
  const place = useWholePixels(frame);
  const label = useSyncExternalStore(board.subscribe, () => summary(board.getState(), sheet));

  const ready = place !== null;
  useLayoutEffect(() => {
    if (!place) return;
    const before = size.current;
    size.current = { width: place.width, height: place.height };
    if (view.current && before.width > 0)
      view.current = panBy(
        view.current,
        Math.round((place.width - before.width) / 2),
        Math.round((place.height - before.height) / 2),
      );
    if (view.current) onView?.(view.current, size.current);
    for (const layer of layers.current.values()) {
      layer.getCanvas().setPixelRatio(window.devicePixelRatio);
      layer.batchDraw();
    }
  }, [place, onView]);

  const redraw = useCallback((names: readonly LayerName[]) => {
    for (const name of names) layers.current.get(name)?.batchDraw();
  }, []);
  const see = useCallback(
    (next: Viewport) => {
      view.current = wholePan(next);
      onView?.(view.current, size.current);
      redraw(layerNames);
    },
    [onView, redraw],
  );
  const show = useCallback(
    (points?: readonly SheetPoint[]) => {
      const state = board.getState();
      const bounds = (points && boundsOf(points, 0.1)) ?? painter.extent(state);
      see(fittedBesideRulers(bounds, size.current, state.solution.route.segments.size > 0));
    },
    [board, painter, see],
  );

  useLayoutEffect(() => {
    if (ready) show();
  }, [ready, show]);

  useEffect(
    () => board.subscribe((state, before) => redraw(touched(state, before, sheet))),
    [board, redraw, sheet],
  );

  useEffect(() => pictures.subscribe(() => redraw(['background'])), [redraw]);

  useEffect(() => {
    let gone = false;
    void document.fonts.load(`500 ${MIN_TEXT}px ${FONT}`).then(() => {
      if (gone) return;
      painter.forgetText();
      redraw(layerNames);
    });
    return () => {
      gone = true;
    };
  }, [painter, redraw]);

  useEffect(() => {
    const element = inner.current;
    if (!ready || !element || !onMount) return;
    return onMount({
      sheet,
      element,
      size: () => size.current,
      viewport: () => view.current as Viewport,
      setViewport: see,
      fit: show,
      labelAt: painter.labelAt,
      labelOf(kind, id) {
        const at = painter.labelOf(kind, id);
        return at && view.current && toSheet(at, view.current);
      },
      drawActive(shapes) {
        painter.setActive(shapes);
        redraw(['active']);
      },
    });
  }, [ready, sheet, painter, onMount, show, see, redraw]);

  return (
    <div className="sheet" ref={frame}>
      <div
        className="sheet-inner"
        ref={inner}
        role="application"
        aria-roledescription={says.role}
        aria-label={label}
        data-sheet={sheet}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a drawing surface is worked by keys
        tabIndex={0}
        style={place ? { left: place.left, top: place.top, width: place.width, height: place.height } : {}}
      >
        {place && (
          <Stage width={place.width} height={place.height} listening={false}>
            {layerNames.map((name) => (
              <Layer
                key={name}
                listening={false}
                ref={(layer: Konva.Layer | null) => {
                  if (layer) layers.current.set(name, layer);
                  else layers.current.delete(name);
                }}
              >
                <Shape
                  listening={false}
                  perfectDrawEnabled={false}
                  sceneFunc={(context: Konva.Context) => {
                    if (!view.current) return;
                    painter.paint(name, context._context, board.getState(), view.current, size.current);
                  }}
                />
              </Layer>
            ))}
          </Stage>
        )}
      </div>
    </div>
  );
}

function fittedBesideRulers(bounds: Bounds, { width, height }: Size, dimensioned: boolean): Viewport {
  const free = { width: width - RULER, height: height - RULER };
  const margin = {
    x: Math.min(MARGIN.x, free.width / (dimensioned ? 3.8 : 5)),
    y: Math.min(MARGIN.y, free.height / 5),
  };
  return panBy(fitted(bounds, free, margin), RULER, RULER);
}

/** Whole pixels of pan keep lines crisp while the sheet is moved. */
function wholePan(view: Viewport): Viewport {
  return { scale: view.scale, panX: Math.round(view.panX), panY: Math.round(view.panY) };
}

/** What the sheet shows, in a sentence for those who do not see it; the route table says the rest. */
function summary(state: BoardState, sheet: SheetId): string {
  const { name, looking } = sheetTitles[sheet];
  const { route, findings } = state.solution;
  const turns = [...route.nodes.values()].filter((node) => node.bend).length;
  const risers = [...route.segments.values()].filter((segment) => segment.vertical).length;
  return says.summary(
    name,
    looking,
    words.counts.legs(route.segments.size),
    words.counts.turns(turns),
    words.counts.risers(risers),
    words.counts.findings(findings.length),
  );
}
