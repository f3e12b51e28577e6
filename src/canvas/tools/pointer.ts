import { toSheet } from '../../drawing/viewport.ts';
import type { ScreenPoint } from '../../graph/sheet.ts';
import type { SheetHandle } from '../sheet-handle.ts';
import type { ToolController } from './controller.ts';
import { coalesce, type FrameCounts } from './frame.ts';
import { followFingers } from './pinch.ts';
import type { KeyInput, Modifiers, PointerInput, PointerKind } from './tool.ts';

export interface Wiring {
  /** Listens on a mounted sheet; the answer stops listening. */
  sheet(handle: SheetHandle): () => void;
  /** Listens to the keyboard of a window; the answer stops listening. */
  keyboard(window: Window): () => void;
  readonly counts: FrameCounts;
}

export interface FrameSource {
  readonly request: (run: () => void) => number;
  readonly release: (id: number) => void;
}

/** Waits for a while; what comes first wins. */
export interface Clock {
  readonly after: (ms: number, run: () => void) => number;
  readonly stop: (id: number) => void;
}

const browserClock: Clock = {
  after: (ms, run) => Number(setTimeout(run, ms)),
  stop: (id) => clearTimeout(id),
};

const browserFrames: FrameSource = {
  request: (run) => requestAnimationFrame(run),
  release: (id) => cancelAnimationFrame(id),
};

/** Longest pause, ms, and widest step, px, between the clicks of a double click: common practice. */
const DOUBLE_CLICK = { pause: 400, step: 6 };

/** How long a finger rests, ms, and how far it may wander, px, for a long press: common practice. */
const LONG_PRESS = { hold: 500, step: 10 };

/** A pen that was seen this little ago, ms, is still in hand: fingers are then the palm. */
const PEN_NEAR = 700;
/** A touch wider than this, px, is a palm and not a fingertip. */
const PALM = 60;

type RawMove = { readonly handle: SheetHandle; readonly event: MouseEvent; readonly clicks: number };

/** Carries the DOM's pointer, wheel and key events of all sheets to one controller. */
export function createWiring(
  controller: ToolController,
  source: FrameSource = browserFrames,
  clock: Clock = browserClock,
): Wiring {
  const fingers = followFingers();
  let active: { readonly id: number; readonly handle: SheetHandle; readonly clicks: number } | null = null;
  /** After two fingers, the one that is left does nothing until all are up. */
  let pinching = false;
  let penDown = false;
  let penSeen = Number.NEGATIVE_INFINITY;
  let resting: { readonly timer: number; readonly at: ScreenPoint } | null = null;
  let lastPress = { time: Number.NEGATIVE_INFINITY, x: 0, y: 0, clicks: 0, button: -1 };

  const frames = coalesce<RawMove>(
    ({ handle, event, clicks }) => controller.move(inputOf(handle, event, -1, clicks)),
    source.request,
    source.release,
  );

  const drop = () => {
    frames.drop();
    active = null;
    controller.cancel();
  };

  const lift = () => {
    if (resting) clock.stop(resting.timer);
    resting = null;
  };

  /** A finger that rests asks for a menu; what it had begun is dropped. */
  const rest = (handle: SheetHandle, event: PointerEvent, at: ScreenPoint) => {
    lift();
    const timer = clock.after(LONG_PRESS.hold, () => {
      resting = null;
      drop();
      pinching = true;
      controller.menu(inputOf(handle, event, 2, 1));
    });
    resting = { timer, at };
  };

  const isPalm = (event: PointerEvent) =>
    penDown || event.timeStamp - penSeen < PEN_NEAR || Math.max(event.width, event.height) > PALM;

  const clicksOf = (event: PointerEvent, at: ScreenPoint): number => {
    const near =
      event.timeStamp - lastPress.time <= DOUBLE_CLICK.pause &&
      Math.hypot(at.x - lastPress.x, at.y - lastPress.y) <= DOUBLE_CLICK.step &&
      event.button === lastPress.button;
    const clicks = near && lastPress.clicks === 1 ? 2 : 1;
    lastPress = { time: event.timeStamp, x: at.x, y: at.y, clicks, button: event.button };
    return clicks;
  };

  const sheet = (handle: SheetHandle): (() => void) => {
    const { element } = handle;
    const stop = new AbortController();
    const on = <K extends keyof HTMLElementEventMap>(
      type: K,
      listener: (event: HTMLElementEventMap[K]) => void,
      passive = true,
    ) => element.addEventListener(type, listener, { signal: stop.signal, passive });

    element.dataset.sheet = handle.sheet;
    element.style.touchAction = 'none';
    element.style.userSelect = 'none';
    const detach = controller.attach(handle);
    const unhook = controller.onCursor((cursor) => {
      element.style.cursor = cursor;
    });

    on(
      'pointerdown',
      (event) => {
        if (event.button === 2) return;
        event.preventDefault();
        element.focus({ preventScroll: true });
        const at = screenOf(handle, event);
        if (event.pointerType === 'touch') {
          if (isPalm(event)) return;
          fingers.down(event.pointerId, at);
          if (fingers.count > 1) {
            lift();
            if (!pinching) drop();
            pinching = true;
          }
          if (pinching) return;
        }
        if (event.pointerType === 'pen') {
          // The hand came down before the pen did.
          if (active && fingers.count > 0) drop();
          fingers.clear();
          pinching = false;
          lift();
          penSeen = event.timeStamp;
        }
        if (active) return;
        penDown = event.pointerType === 'pen';
        if (event.pointerType === 'touch') rest(handle, event, at);
        frames.flush();
        element.setPointerCapture(event.pointerId);
        const clicks = clicksOf(event, at);
        active = { id: event.pointerId, handle, clicks };
        controller.down(inputOf(handle, event, event.button, clicks));
      },
      false,
    );

    on('pointermove', (event) => {
      if (event.pointerType === 'pen') penSeen = event.timeStamp;
      if (resting && event.pointerType === 'touch') {
        const now = screenOf(handle, event);
        if (Math.hypot(now.x - resting.at.x, now.y - resting.at.y) > LONG_PRESS.step) lift();
      }
      if (fingers.count > 0 && event.pointerType === 'touch') {
        const step = fingers.move(event.pointerId, screenOf(handle, event));
        if (pinching) {
          if (step) {
            controller.scroll(handle.sheet, step.dx, step.dy);
            controller.zoom(handle.sheet, step.around, step.factor);
          }
          return;
        }
      }
      if (active ? active.id !== event.pointerId : event.pointerType === 'touch') return;
      frames.push({ handle: active?.handle ?? handle, event, clicks: active?.clicks ?? 0 });
    });

    on('pointerup', (event) => {
      endFinger(event);
      if (active?.id !== event.pointerId) return;
      const { clicks } = active;
      frames.flush();
      active = null;
      controller.up(inputOf(handle, event, event.button, clicks));
    });

    const lost = (event: PointerEvent) => {
      endFinger(event);
      if (active?.id === event.pointerId) drop();
    };
    on('pointercancel', lost);
    on('lostpointercapture', lost);
    on('pointerleave', () => {
      if (active) return;
      frames.drop();
      controller.out();
    });
    on('mousedown', (event) => event.button === 1 && event.preventDefault(), false);
    on(
      'contextmenu',
      (event) => {
        event.preventDefault();
        // A long press is timed here, and the menu key has its own way in.
        if (event.button !== 2 || fingers.count > 0 || pinching) return;
        frames.flush();
        element.focus({ preventScroll: true });
        active = null;
        controller.menu(inputOf(handle, event, 2, 1));
      },
      false,
    );
    on('focus', () => controller.focus(handle.sheet));

    on(
      'wheel',
      (event) => {
        event.preventDefault();
        const line = event.deltaMode === 1 ? 16 : event.deltaMode === 2 ? handle.size().height : 1;
        const [dx, dy] = [event.deltaX * line, event.deltaY * line];
        if (event.ctrlKey || event.metaKey)
          controller.zoom(handle.sheet, screenOf(handle, event), wheelFactor(dy));
        else if (event.shiftKey && dx === 0) controller.scroll(handle.sheet, -dy, 0);
        else controller.scroll(handle.sheet, -dx, -dy);
        frames.push({ handle: active?.handle ?? handle, event, clicks: active?.clicks ?? 0 });
      },
      false,
    );

    return () => {
      stop.abort();
      if (active?.handle === handle) drop();
      unhook();
      detach();
    };
  };

  const endFinger = (event: PointerEvent) => {
    if (event.pointerType === 'pen') penDown = false;
    if (event.pointerType !== 'touch') return;
    lift();
    fingers.up(event.pointerId);
    if (fingers.count === 0) pinching = false;
  };

  const keyboard = (window: Window): (() => void) => {
    const stop = new AbortController();
    const { signal } = stop;
    window.addEventListener(
      'keydown',
      (event) => {
        if (event.defaultPrevented || event.isComposing || !hearsKeys(event.target, event.key)) return;
        frames.flush();
        if (controller.key(keyOf(event, controller))) event.preventDefault();
      },
      { signal },
    );
    window.addEventListener(
      'keyup',
      (event) => {
        if (controller.keyUp(keyOf(event, controller))) event.preventDefault();
      },
      { signal },
    );
    window.addEventListener(
      'blur',
      () => {
        fingers.clear();
        lift();
        pinching = false;
        penDown = false;
        controller.keyUp({ key: 'Alt', modifiers: noKeys, sheet: controller.sheet });
        controller.keyUp({ key: ' ', modifiers: noKeys, sheet: controller.sheet });
        if (active) drop();
      },
      { signal },
    );
    return () => stop.abort();
  };

  return { sheet, keyboard, counts: frames.counts };
}

const noKeys: Modifiers = { shift: false, alt: false, mod: false };

/** A notch of a wheel is 100 px or more, a trackpad's pinch a few: both end as a calm zoom. */
function wheelFactor(dy: number): number {
  return Math.exp(-Math.min(25, Math.max(-25, dy)) * 0.01);
}

function screenOf({ element }: SheetHandle, event: MouseEvent): ScreenPoint {
  const box = element.getBoundingClientRect();
  return {
    x: event.clientX - box.left - element.clientLeft,
    y: event.clientY - box.top - element.clientTop,
  };
}

function modifiersOf(event: MouseEvent | KeyboardEvent): Modifiers {
  return { shift: event.shiftKey, alt: event.altKey, mod: event.ctrlKey || event.metaKey };
}

function inputOf(handle: SheetHandle, event: MouseEvent, button: number, clicks: number): PointerInput {
  const screen = screenOf(handle, event);
  return {
    sheet: handle.sheet,
    screen,
    point: toSheet(screen, handle.viewport()),
    modifiers: modifiersOf(event),
    button,
    pointerType: 'pointerType' in event ? (event.pointerType as PointerKind) : 'mouse',
    clicks,
  };
}

function keyOf(event: KeyboardEvent, controller: ToolController): KeyInput {
  return { key: event.key, modifiers: modifiersOf(event), sheet: controller.sheet };
}

const typesText = 'input, textarea, select, [contenteditable=""], [contenteditable="true"], [role="textbox"]';
const ownsKeys = '[role="dialog"], [role="alertdialog"], [role="menu"], [role="listbox"], [role="combobox"]';
const controlKeys = /^(Enter| |Tab|Arrow\w+|Home|End|Page\w+)$/;

/** A text field, a dialog or a menu keeps its keys; a button keeps those that work it. */
export function hearsKeys(target: EventTarget | null, key: string): boolean {
  const closest = (target as Partial<Element> | null)?.closest;
  if (!closest) return true;
  const within = (selector: string) => closest.call(target, selector) !== null;
  if (within('[data-sheet]')) return true;
  if (within(typesText) || within(ownsKeys)) return false;
  return (target as Element).tagName === 'BODY' || !controlKeys.test(key);
}
