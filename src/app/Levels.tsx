import { type KeyboardEvent, type PointerEvent, useSyncExternalStore } from 'react';
import { createStore } from 'zustand/vanilla';
import { snapStep } from '../canvas/tools/snap-step.ts';
import { RULER } from '../drawing/grid.ts';
import { type Size, toScreen, toSheet, type Viewport } from '../drawing/viewport.ts';
import type { SheetId } from '../graph/sheet.ts';
import { formatLength } from '../units/index.ts';
import { words } from '../words/index.ts';
import { useApp, useBoard } from './context.ts';

const says = words.sheets.levels;

interface Look {
  readonly view: Viewport;
  readonly size: Size;
}

/** Tells the lines over a sheet how it lies, without drawing the sheet again. */
export function createLookout() {
  const store = createStore<{ readonly look: Look | null }>(() => ({ look: null }));
  return {
    see: (view: Viewport, size: Size) => store.setState({ look: { view, size } }),
    getLook: () => store.getState().look,
    subscribe: store.subscribe,
  };
}

/** A plane that a sheet sees edge on. */
interface Level {
  readonly id: 'working-height' | 'section-x' | 'section-y';
  readonly name: string;
  /** Coordinate of the sheet that stays the same along the line. */
  readonly across: 'u' | 'v';
  /** m; null where it is not set, and waits at the edge of the sheet. */
  readonly at: number | null;
  /** The way that a section looks, in screen pixels; none for a height. */
  readonly looks: 'up' | 'left' | null;
}

/**
 * The planes of the other sheets as lines that are dragged by their marks: the working height on a
 * section, and on the floor where the sections are cut. Arrow keys move a mark by the grid's step,
 * Delete takes a cut away.
 */
export function Levels(props: {
  readonly sheet: SheetId;
  readonly lookout: ReturnType<typeof createLookout>;
  /** Both sections are on the desk, so the floor shows both cuts. */
  readonly both: boolean;
}) {
  const look = useSyncExternalStore(props.lookout.subscribe, props.lookout.getLook);
  const height = useBoard((state) => state.workingHeight);
  const depths = useBoard((state) => state.sectionDepth);
  const section = useBoard((state) => state.section);
  if (!look) return null;
  const levels: Level[] =
    props.sheet === 'floor'
      ? (
          [
            { id: 'section-x', name: says.cutNorth, across: 'v', at: depths['section-x'], looks: 'up' },
            {
              id: 'section-y',
              name: says.cutWest,
              across: 'u',
              at: depths['section-y'],
              looks: 'left',
            },
          ] as const
        ).filter(({ id }) => props.both || id === section)
      : [{ id: 'working-height', name: says.workingHeight, across: 'v', at: height, looks: null }];
  return (
    <div className="levels">
      {levels.map((level) => (
        <LevelLine key={level.id} level={level} look={look} />
      ))}
    </div>
  );
}

/** From the sheet's edge to a mark that waits there, px. */
const PARKED = 9;

function LevelLine({ level, look }: { level: Level; look: Look }) {
  const { board } = useApp();
  const units = useBoard((state) => state.units);
  const { view, size } = look;
  const upright = level.across === 'u';
  const room = upright ? size.width : size.height;
  const parked = room - PARKED;
  const place =
    level.at === null
      ? parked
      : upright
        ? toScreen({ u: level.at, v: 0 }, view).x
        : toScreen({ u: 0, v: level.at }, view).y;
  const outside = place < RULER || place > room;
  if (outside) return null;

  const put = (at: number | null) => {
    if (level.id !== 'working-height')
      board.set({ sectionDepth: { ...board.getState().sectionDepth, [level.id]: at } });
    else if (at !== null) board.set({ workingHeight: at });
  };
  const step = snapStep(view.scale, units);
  const rounded = (at: number) => Number((Math.round(at / step) * step).toFixed(9));
  const follow = (event: PointerEvent<HTMLElement>) => {
    if (!event.currentTarget.hasPointerCapture(event.pointerId)) return;
    const box = event.currentTarget.closest('.levels')?.getBoundingClientRect();
    if (!box) return;
    const point = toSheet({ x: event.clientX - box.left, y: event.clientY - box.top }, view);
    const pixel = upright ? event.clientX - box.left : event.clientY - box.top;
    put(level.looks !== null && pixel > parked - 4 ? null : rounded(point[level.across]));
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const way = { ArrowUp: 1, ArrowRight: 1, ArrowDown: -1, ArrowLeft: -1, PageUp: 10, PageDown: -10 }[
      event.key
    ];
    const gone = (event.key === 'Delete' || event.key === 'Backspace') && level.looks !== null;
    if (way === undefined && !gone) return;
    event.preventDefault();
    event.stopPropagation();
    const edge = toSheet({ x: parked, y: parked }, view)[level.across];
    put(gone ? null : rounded((level.at ?? edge) + (way ?? 0) * step));
  };
  const text = level.at === null ? words.sheets.frame.whole : formatLength(level.at, units);
  const spot = Math.round(place);
  return (
    <>
      {level.at !== null && (
        <div
          className="level-line"
          data-upright={upright || undefined}
          style={upright ? { left: spot } : { top: spot }}
        />
      )}
      <div
        className="level-mark"
        data-upright={upright || undefined}
        data-parked={level.at === null || undefined}
        role="slider"
        tabIndex={0}
        aria-label={level.name}
        aria-orientation={upright ? 'horizontal' : 'vertical'}
        aria-valuenow={Number((level.at ?? 0).toFixed(3))}
        aria-valuetext={text}
        title={level.at === null ? says.drag(level.name) : level.name}
        style={upright ? { left: spot } : { top: spot }}
        onPointerDown={(event) => {
          event.preventDefault();
          event.currentTarget.focus();
          event.currentTarget.setPointerCapture(event.pointerId);
        }}
        onPointerMove={follow}
        onKeyDown={onKeyDown}
      >
        {level.looks && <Arrow looks={level.looks} />}
        {level.at !== null && <span>{text}</span>}
      </div>
    </>
  );
}

function Arrow({ looks }: { looks: 'up' | 'left' }) {
  return (
    <svg width="10" height="10" viewBox="0 0 10 10" aria-hidden="true">
      <path fill="currentColor" d={looks === 'up' ? 'M5 1 9.5 9h-9z' : 'M1 5 9 .5v9z'} />
    </svg>
  );
}
