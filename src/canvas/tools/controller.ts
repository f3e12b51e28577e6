import { boundsOn } from '../../drawing/box-faces.ts';
import { panBy, toScreen, toSheet, zoomAt } from '../../drawing/viewport.ts';
import { project, type ScreenPoint, type SheetId, type SheetPoint } from '../../graph/sheet.ts';
import { type Board, type BoardState, nothing } from '../board.ts';
import { has, type Item, itemsOf, only } from '../selection.ts';
import type { FieldAsk, MenuAsk } from './ask.ts';
import { createContext } from './context.ts';
import { actionOf } from './keys.ts';
import { panning } from './pan.ts';
import { readyPhase } from './ready.ts';
import type { Cursor, KeyInput, Phase, PointerInput, Surface } from './tool.ts';

export interface ControllerOptions {
  /** Hears what the tools have to say, for a status line and a live region. */
  readonly announce?: (text: string) => void;
  /** Opens a field on a sheet, or closes the one that is open. */
  readonly ask?: (field: FieldAsk | null) => void;
  /** Offers what can be done with what is selected. */
  readonly menu?: (menu: MenuAsk) => void;
}

/** One hand over all sheets: the phase that it is in, and the ways events reach it. */
export interface ToolController {
  /** Makes a sheet known; the answer takes it out again. */
  attach(surface: Surface): () => void;
  move(at: PointerInput): void;
  down(at: PointerInput): void;
  up(at: PointerInput): void;
  /** The pointer went off the sheets with nothing pressed. */
  out(): void;
  /** A right click or a long press: drops the gesture and offers a menu. */
  menu(at: PointerInput): void;
  /** True where the key was used. */
  key(input: KeyInput): boolean;
  keyUp(input: KeyInput): boolean;
  /** Moves what a sheet shows by pixels. */
  scroll(sheet: SheetId, dx: number, dy: number): void;
  zoom(sheet: SheetId, around: ScreenPoint, factor: number): void;
  /** The pointer or the focus was lost: drops the gesture, and the document is exactly what it was. */
  cancel(): void;
  /** The sheet that keys go to. */
  focus(sheet: SheetId): void;
  readonly sheet: SheetId;
  /** True while a press is being followed. */
  readonly pressed: boolean;
  /** The phase's name. */
  readonly phase: string;
  readonly cursor: Cursor;
  onCursor(listener: (cursor: Cursor) => void): () => void;
  dispose(): void;
}

/** What one press of a zoom key multiplies the scale by. */
const ZOOM_STEP = 1.25;

/** The tools of a board, shared by its sheets, with no DOM in reach. */
export function createToolController(board: Board, options: ControllerOptions = {}): ToolController {
  const surfaces = new Map<SheetId, Surface>();
  const listeners = new Set<(cursor: Cursor) => void>();
  const announce = options.announce ?? (() => {});
  const ask = options.ask ?? (() => {});
  const menu = options.menu ?? (() => {});
  const context = createContext(board, surfaces, { announce, ask, menu });
  let phase: Phase = readyPhase(context, board.getState().tool);
  /** Panning with the middle button or the space bar leaves the phase below as it is. */
  let overlay: Phase | null = null;
  let spaceHeld = false;
  let busy = false;
  let sheet: SheetId = 'floor';
  let last: PointerInput | null = null;
  let shown: Cursor | null = null;

  const cursor = (): Cursor => overlay?.cursor ?? (spaceHeld ? 'grab' : phase.cursor);
  const showCursor = () => {
    const now = cursor();
    if (now === shown) return;
    shown = now;
    for (const listener of listeners) listener(now);
  };

  const go = (next: Phase) => {
    if (next === phase) return;
    phase.leave?.();
    phase = next;
    phase.enter?.();
  };

  /** Runs a handler of the phase; a change of tool from within it wins over the phase it returns. */
  const run = (handler: (now: Phase) => Phase | undefined) => {
    const before = phase;
    busy = true;
    try {
      const next = handler(before);
      if (next && phase === before) go(next);
    } finally {
      busy = false;
    }
    showCursor();
  };

  const toOverlay = (handler: (now: Phase) => Phase | undefined): boolean => {
    if (!overlay) return false;
    if (handler(overlay)) overlay = null;
    showCursor();
    return true;
  };

  const unsubscribe = board.subscribe((state, previous) => {
    if (state.tool !== previous.tool || state.schemeId !== previous.schemeId) {
      go(readyPhase(context, state.tool));
      announce('');
      showCursor();
    } else if (state.kinds !== previous.kinds) {
      phase.kindTaken?.();
    } else if (state.job !== previous.job && !busy) {
      run((now) => now.changed?.());
    }
  });

  /** Selects what the menu is about, unless it is among what is selected, and offers the menu. */
  const openMenu = ({ sheet: on, screen, point }: Omit<MenuAsk, 'items'>, hits: readonly Item[]) => {
    const { selection } = board.getState();
    const items = hits.map(({ kind, id }) => ({ kind, id }));
    const [first] = items;
    if (!items.some((item) => has(selection, item))) board.set({ selection: first ? only(first) : nothing });
    menu({ sheet: on, screen, point, items });
  };

  const menuByKey = (on: SheetId): boolean => {
    const surface = surfaces.get(on);
    const state = board.getState();
    if (!surface || state.tool !== 'select' || phase.pressed) return false;
    const items = itemsOf(state.selection);
    const { width, height } = surface.size();
    const at = placeOfItem(items[0], state, on);
    const screen = at ? toScreen(at, surface.viewport()) : { x: width / 2, y: height / 2 };
    openMenu({ sheet: on, screen, point: toSheet(screen, surface.viewport()) }, items);
    return true;
  };

  const see = (at: PointerInput) => {
    sheet = at.sheet;
    last = at;
  };

  /** Snapping comes and goes under a pointer that stands still. */
  const suspendSnapping = (alt: boolean) => {
    if (!last || last.modifiers.alt === alt) return;
    const again = { ...last, button: -1, modifiers: { ...last.modifiers, alt } };
    last = again;
    run((now) => now.move?.(again));
  };

  return {
    attach(surface) {
      surfaces.set(surface.sheet, surface);
      return () => {
        if (surfaces.get(surface.sheet) !== surface) return;
        if (last?.sheet === surface.sheet) {
          overlay = null;
          if (phase.pressed) run((now) => now.cancel());
          last = null;
        }
        surfaces.delete(surface.sheet);
        if (sheet === surface.sheet) sheet = 'floor';
      };
    },
    move(at) {
      see(at);
      if (!toOverlay((now) => now.move?.(at))) run((now) => now.move?.(at));
    },
    down(at) {
      see(at);
      if (overlay) return;
      announce('');
      if (at.button === 1 || (at.button === 0 && spaceHeld)) {
        overlay = panning(context, at, phase);
        showCursor();
      } else {
        run((now) => now.down?.(at));
      }
    },
    up(at) {
      see(at);
      if (!toOverlay((now) => now.up?.(at))) run((now) => now.up?.(at));
    },
    out() {
      last = null;
      run((now) => {
        now.out?.();
        return undefined;
      });
    },
    menu(at) {
      see(at);
      if (overlay || phase.pressed) this.cancel();
      if (board.getState().tool !== 'select') return;
      openMenu(at, context.underAt(at));
    },
    key(input) {
      if (input.key === 'Escape' && toOverlay((now) => now.cancel())) return true;
      if (input.key === 'Alt') {
        suspendSnapping(true);
        return true;
      }
      let used = false;
      run((now) => {
        const next = now.key?.(input) ?? false;
        used = next !== false;
        return typeof next === 'boolean' ? undefined : next;
      });
      if (used) return true;
      if (input.key === 'Escape' && phase.pressed) {
        run((now) => now.cancel());
        return true;
      }
      switch (actionOf(input, 'sheets')) {
        case 'pan':
          spaceHeld = true;
          showCursor();
          return true;
        case 'menu':
          return menuByKey(input.sheet);
        case 'zoom.in':
          return zoomCentre(surfaces.get(input.sheet), ZOOM_STEP);
        case 'zoom.out':
          return zoomCentre(surfaces.get(input.sheet), 1 / ZOOM_STEP);
        case 'zoom.fit':
          surfaces.get(input.sheet)?.fit();
          return surfaces.has(input.sheet);
        default:
          return false;
      }
    },
    keyUp(input) {
      if (input.key === 'Alt') suspendSnapping(false);
      if (input.key !== ' ' || !spaceHeld) return false;
      spaceHeld = false;
      showCursor();
      return true;
    },
    scroll(on, dx, dy) {
      const surface = surfaces.get(on);
      surface?.setViewport(panBy(surface.viewport(), dx, dy));
    },
    zoom(on, around, factor) {
      const surface = surfaces.get(on);
      surface?.setViewport(zoomAt(surface.viewport(), around, factor));
    },
    cancel() {
      spaceHeld = false;
      if (toOverlay((now) => now.cancel())) return;
      run((now) => now.cancel());
    },
    focus(on) {
      sheet = on;
    },
    get sheet() {
      return sheet;
    },
    get pressed() {
      return overlay !== null || phase.pressed === true;
    },
    get phase() {
      return overlay?.name ?? phase.name;
    },
    get cursor() {
      return cursor();
    },
    onCursor(listener) {
      listeners.add(listener);
      listener(cursor());
      return () => listeners.delete(listener);
    },
    dispose() {
      unsubscribe();
      phase.leave?.();
      listeners.clear();
    },
  };
}

function zoomCentre(surface: Surface | undefined, factor: number): boolean {
  if (!surface) return false;
  const { width, height } = surface.size();
  surface.setViewport(zoomAt(surface.viewport(), { x: width / 2, y: height / 2 }, factor));
  return true;
}

/** Where a thing is on a sheet, for a menu that no pointer has asked for. */
function placeOfItem(
  item: Item | undefined,
  { job, solution }: BoardState,
  sheet: SheetId,
): SheetPoint | null {
  const { nodes, segments } = solution.route;
  const node = item && (nodes.get(item.id) ?? nodes.get(segments.get(item.id)?.from ?? ''));
  if (node) return project(node.at, sheet);
  const box = [...job.blocks, ...job.exits].find(({ id }) => id === item?.id);
  if (!box) return null;
  const { minU, minV, maxU, maxV } = boundsOn(box, sheet);
  return { u: (minU + maxU) / 2, v: (minV + maxV) / 2 };
}
