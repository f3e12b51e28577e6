import type Konva from 'konva/lib/Core.js';
import { type KeyboardEvent, useEffect, useLayoutEffect, useMemo, useRef, useSyncExternalStore } from 'react';
import { Layer, Shape, Stage } from 'react-konva/lib/ReactKonvaCore.js';
import { FONT, MIN_TEXT } from '../drawing/palette.ts';
import { isometric, type Turn, turnText } from '../drawing/turned.ts';
import { fit as fitted, type Viewport } from '../drawing/viewport.ts';
import type { Board, BoardState } from './board.ts';
import { type Look, listen, turnByKey } from './isometric-input.ts';
import { paintScene, paintSceneMarks, sceneBounds } from './isometric-painter.ts';
import { createMeasure } from './text-width.ts';
import { useWholePixels } from './whole-pixels.ts';
import './canvas.css';
import { words } from '../words/index.ts';

const says = words.sheets.isometric;

export interface IsometricViewProps {
  readonly board: Board;
  /** Hears from where the drawing is looked at, for a line beside the picture. */
  readonly onTurn?: (text: string) => void;
}

/**
 * The route in space, to look at and to select in: dragging turns it, arrow keys turn it by 15°, a double
 * click or Home brings back the isometric. It follows the board and draws only when something changed.
 */
export function IsometricView({ board, onTurn }: IsometricViewProps) {
  const frame = useRef<HTMLDivElement>(null);
  const inner = useRef<HTMLDivElement>(null);
  const layers = useRef<Partial<Record<'scene' | 'marks', Konva.Layer>>>({});
  const measure = useMemo(createMeasure, []);
  const place = useWholePixels(frame);
  const look = useRef<Look>({
    turn: isometric,
    view: null,
    size: { width: 0, height: 0 },
    fitted: true,
  });
  const legs = useSyncExternalStore(board.subscribe, () => board.getState().solution.route.segments.size);

  const act = useMemo(() => {
    const redraw = (all: boolean) => {
      if (all) layers.current.scene?.batchDraw();
      layers.current.marks?.batchDraw();
    };
    const show = () => {
      const now = look.current;
      now.view = fitted(sceneBounds(board.getState(), now.turn), now.size, Math.min(48, now.size.width / 8));
      now.fitted = true;
      redraw(true);
    };
    const turnTo = (turn: Turn) => {
      look.current.turn = turn;
      onTurn?.(turnText(turn));
      if (look.current.fitted) show();
      else redraw(true);
    };
    const see = (view: Viewport) => {
      look.current.view = view;
      look.current.fitted = false;
      redraw(true);
    };
    return { redraw, show, turnTo, see };
  }, [board, onTurn]);

  useLayoutEffect(() => {
    if (!place) return;
    look.current.size = { width: place.width, height: place.height };
    if (look.current.fitted || !look.current.view) act.show();
    else act.redraw(true);
  }, [place, act]);

  useEffect(() => {
    onTurn?.(turnText(look.current.turn));
    let gone = false;
    void document.fonts.load(`500 ${MIN_TEXT}px ${FONT}`).then(() => {
      if (gone) return;
      measure.forget();
      act.redraw(false);
    });
    const stop = board.subscribe((state, before) => {
      const what = changed(state, before);
      if (what === 'another drawing') act.show();
      else if (what) act.redraw(what === 'scene');
    });
    return () => {
      gone = true;
      stop();
    };
  }, [board, act, measure, onTurn]);

  const ready = place !== null;
  useEffect(() => {
    const element = inner.current;
    if (!ready || !element) return;
    return listen(element, board, look.current, act);
  }, [ready, board, act]);

  const onKeyDown = (event: KeyboardEvent) => {
    if (!turnByKey(event, look.current, act)) return;
    event.preventDefault();
    event.stopPropagation();
  };

  return (
    <div className="sheet" ref={frame}>
      <div
        className="sheet-inner isometric"
        ref={inner}
        role="application"
        aria-roledescription={says.role}
        aria-label={says.label(words.counts.legs(legs))}
        data-view="isometric"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the picture is turned by keys
        tabIndex={0}
        onKeyDown={onKeyDown}
        style={place ? { left: place.left, top: place.top, width: place.width, height: place.height } : {}}
      >
        {place && (
          <Stage width={place.width} height={place.height} listening={false}>
            {(['scene', 'marks'] as const).map((name) => (
              <Layer
                key={name}
                listening={false}
                ref={(layer: Konva.Layer | null) => {
                  if (layer) layers.current[name] = layer;
                  else delete layers.current[name];
                }}
              >
                <Shape
                  listening={false}
                  perfectDrawEnabled={false}
                  sceneFunc={(context: Konva.Context) => {
                    const { view, turn, size } = look.current;
                    if (!view) return;
                    const pen = context._context;
                    if (name === 'scene') paintScene(pen, board.getState(), turn, view, size);
                    else paintSceneMarks(pen, board.getState(), turn, view, size, measure.with(pen));
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

/** What a change of the board asks of the picture. */
function changed(state: BoardState, before: BoardState): 'scene' | 'marks' | 'another drawing' | null {
  if (state.schemeId !== before.schemeId) return 'another drawing';
  if (
    state.solution !== before.solution ||
    state.live !== before.live ||
    state.speed !== before.speed ||
    state.colourBy !== before.colourBy ||
    state.theme !== before.theme
  )
    return 'scene';
  return state.selection !== before.selection || state.hover !== before.hover ? 'marks' : null;
}
