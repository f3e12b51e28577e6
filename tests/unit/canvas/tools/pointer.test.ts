import { describe, expect, it } from 'vitest';
import { createBoard } from '../../../../src/app/store.ts';
import type { BoardSettings } from '../../../../src/canvas/board.ts';
import type { SheetHandle } from '../../../../src/canvas/sheet-handle.ts';
import type { MenuAsk } from '../../../../src/canvas/tools/ask.ts';
import { createToolController } from '../../../../src/canvas/tools/controller.ts';
import { createWiring, hearsKeys } from '../../../../src/canvas/tools/pointer.ts';
import type { Viewport } from '../../../../src/drawing/viewport.ts';
import { bentJob } from '../driver.ts';

/** An element of 800 x 600 at (10, 20) in the page, with as much of the DOM as the wiring uses. */
class Paper extends EventTarget {
  readonly dataset: Record<string, string> = {};
  readonly style: Record<string, string> = {};
  readonly clientLeft = 0;
  readonly clientTop = 0;
  readonly captured: number[] = [];
  focus() {}
  setPointerCapture(id: number) {
    this.captured.push(id);
  }
  getBoundingClientRect() {
    return { left: 10, top: 20 };
  }
}

function rig(settings: Partial<BoardSettings> = {}) {
  const board = createBoard(bentJob(), { settings });
  const menus: MenuAsk[] = [];
  const controller = createToolController(board, { menu: (menu) => menus.push(menu) });
  const alarms = new Map<number, () => void>();
  const waiting = new Map<number, () => void>();
  let frame = 0;
  const wiring = createWiring(
    controller,
    {
      request: (run) => {
        frame += 1;
        waiting.set(frame, run);
        return frame;
      },
      release: (id) => void waiting.delete(id),
    },
    {
      after: (_ms, run) => {
        frame += 1;
        alarms.set(frame, run);
        return frame;
      },
      stop: (id) => void alarms.delete(id),
    },
  );
  const paper = new Paper();
  const window = new EventTarget();
  let view: Viewport = { scale: 100, panX: 100, panY: 500 };
  const handle: SheetHandle = {
    sheet: 'floor',
    element: paper as unknown as HTMLElement,
    size: () => ({ width: 800, height: 600 }),
    viewport: () => view,
    setViewport: (next) => {
      view = next;
    },
    fit: () => {},
    labelAt: () => null,
    labelOf: () => null,
    drawActive: () => {},
  };
  const unwire = wiring.sheet(handle);
  wiring.keyboard(window as unknown as Window);
  let time = 0;
  const send = (target: EventTarget, type: string, fields: object) => {
    const event = Object.assign(new Event(type, { cancelable: true }), fields);
    Object.defineProperty(event, 'timeStamp', { value: time });
    target.dispatchEvent(event);
    return event;
  };
  const plain = { shiftKey: false, altKey: false, ctrlKey: false, metaKey: false };
  const pointer = (type: string, u: number, v: number, more: object = {}) => {
    time += 50;
    const place = { clientX: 10 + 100 + u * 100, clientY: 20 + 500 - v * 100 };
    return send(paper, type, { pointerId: 1, pointerType: 'mouse', button: 0, ...plain, ...place, ...more });
  };
  return {
    board,
    controller,
    paper,
    wiring,
    unwire,
    pointer,
    view: () => view,
    wheel: (more: object) =>
      send(paper, 'wheel', {
        deltaX: 0,
        deltaY: 0,
        deltaMode: 0,
        clientX: 410,
        clientY: 320,
        ...plain,
        ...more,
      }),
    key: (key: string, more: object = {}) =>
      send(window, 'keydown', { key, isComposing: false, ...plain, ...more }),
    blur: () => send(window, 'blur', {}),
    wait: (ms: number) => {
      time += ms;
    },
    menus,
    /** Lets the time pass that a waiting long press needs. */
    ring: () => {
      const runs = [...alarms.values()];
      alarms.clear();
      for (const run of runs) run();
    },
    tick: () => {
      const runs = [...waiting.values()];
      waiting.clear();
      for (const run of runs) run();
    },
    at: (id: string) => board.getState().job.schemes[0]?.nodes.find((n) => n.id === id)?.at,
  };
}

describe('the wiring of a sheet', () => {
  it('moves a node with the pointer and holds on to it', () => {
    const r = rig();
    r.pointer('pointerdown', 3, 1);
    r.pointer('pointermove', 4, 1);
    r.pointer('pointerup', 4, 1);
    expect(r.at('n3')).toEqual([4, 1, 2.4]);
    expect(r.paper.captured).toEqual([1]);
  });

  it('solves once a frame however many moves come in', () => {
    const r = rig();
    r.pointer('pointerdown', 3, 1);
    r.pointer('pointermove', 3.5, 1);
    r.tick();
    const { solves } = r.board.stats;
    for (let i = 1; i <= 20; i += 1) r.pointer('pointermove', 3.5 + i / 10, 1);
    r.tick();
    expect(r.board.stats.solves - solves).toBe(1);
    expect(r.wiring.counts).toEqual({ received: 21, delivered: 2 });
  });

  it.each(['pointercancel', 'lostpointercapture'])('drops the gesture exactly on %s', (type) => {
    const r = rig();
    const { job, solution } = r.board.getState();
    r.pointer('pointerdown', 3, 1);
    r.pointer('pointermove', 4, 1);
    r.tick();
    r.pointer(type, 4, 1);
    expect(r.board.getState().live).toBe(job);
    expect(r.board.getState().solution).toBe(solution);
    expect(r.controller.phase).toBe('select/idle');
  });

  it('drops the gesture when the window loses the focus', () => {
    const r = rig();
    const { job } = r.board.getState();
    r.pointer('pointerdown', 3, 1);
    r.pointer('pointermove', 4, 1);
    r.tick();
    r.blur();
    r.pointer('pointerup', 4, 1);
    expect(r.board.getState().job).toBe(job);
    expect(r.board.getState().live).toBe(job);
  });

  it('does not drop anything when the capture ends after the button is let go of', () => {
    const r = rig();
    r.pointer('pointerdown', 3, 1);
    r.pointer('pointermove', 4, 1);
    r.pointer('pointerup', 4, 1);
    r.pointer('lostpointercapture', 4, 1);
    expect(r.at('n3')).toEqual([4, 1, 2.4]);
  });

  it('takes two quick presses at one place for a double click', () => {
    const r = rig();
    for (let i = 0; i < 2; i += 1) {
      r.pointer('pointerdown', 2, 1);
      r.pointer('pointerup', 2, 1);
    }
    expect(r.at('n5')).toEqual([2, 1, 2.4]);
  });

  it('takes two slow presses for two clicks', () => {
    const r = rig();
    for (let i = 0; i < 2; i += 1) {
      r.pointer('pointerdown', 2, 1);
      r.pointer('pointerup', 2, 1);
      r.wait(600);
    }
    expect(r.at('n5')).toBeUndefined();
  });

  it('selects no text and lets no page scroll: the press and the wheel are its own', () => {
    const r = rig();
    expect(r.pointer('pointerdown', 5, 5).defaultPrevented).toBe(true);
    expect(r.wheel({ deltaY: 10 }).defaultPrevented).toBe(true);
    expect(r.paper.style.touchAction).toBe('none');
  });

  it('pans by the wheel, sideways with Shift', () => {
    const r = rig();
    r.wheel({ deltaX: 5, deltaY: 20 });
    expect(r.view()).toEqual({ scale: 100, panX: 95, panY: 480 });
    r.wheel({ deltaY: 20, shiftKey: true });
    expect(r.view()).toEqual({ scale: 100, panX: 75, panY: 480 });
  });

  it('zooms to the pointer by Control and the wheel', () => {
    const r = rig();
    r.wheel({ deltaY: -10, ctrlKey: true });
    const { scale, panX, panY } = r.view();
    expect(scale).toBeCloseTo(100 * Math.exp(0.1), 9);
    expect((400 - panX) / scale).toBeCloseTo(3, 9);
    expect((panY - 300) / scale).toBeCloseTo(2, 9);
  });

  it('brings what is dragged along when the wheel moves the sheet under a pointer that stands still', () => {
    const r = rig();
    r.pointer('pointerdown', 3, 1);
    r.pointer('pointermove', 4, 1);
    r.tick();
    r.wheel({ deltaX: 100, clientX: 10 + 500, clientY: 20 + 400 });
    r.tick();
    expect(r.board.getState().live.schemes[0]?.nodes[2]?.at).toEqual([5, 1, 2.4]);
  });

  it('pans and zooms by two fingers, and drops what one had begun', () => {
    const r = rig();
    const { job } = r.board.getState();
    r.pointer('pointerdown', 3, 1, { pointerType: 'touch', pointerId: 1 });
    r.pointer('pointermove', 3.5, 1, { pointerType: 'touch', pointerId: 1 });
    r.tick();
    r.pointer('pointerdown', 5, 1, { pointerType: 'touch', pointerId: 2 });
    expect(r.board.getState().live).toBe(job);
    r.pointer('pointermove', 6.5, 1, { pointerType: 'touch', pointerId: 2 });
    expect(r.view().scale).toBeCloseTo(200, 9);
    r.pointer('pointerup', 6.5, 1, { pointerType: 'touch', pointerId: 2 });
    r.pointer('pointermove', 1, 1, { pointerType: 'touch', pointerId: 1 });
    r.pointer('pointerup', 1, 1, { pointerType: 'touch', pointerId: 1 });
    expect(r.board.getState().job).toBe(job);
  });

  it('takes no finger for a point while the pen is down', () => {
    const r = rig();
    r.pointer('pointerdown', 3, 1, { pointerType: 'pen', pointerId: 7 });
    r.pointer('pointerdown', 0, 0, { pointerType: 'touch', pointerId: 8 });
    r.pointer('pointermove', 4, 1, { pointerType: 'pen', pointerId: 7 });
    r.pointer('pointerup', 4, 1, { pointerType: 'pen', pointerId: 7 });
    expect(r.at('n3')).toEqual([4, 1, 2.4]);
  });

  it('leaves the secondary button to the menu', () => {
    const r = rig();
    expect(r.pointer('pointerdown', 3, 1, { button: 2 }).defaultPrevented).toBe(false);
    expect(r.controller.phase).toBe('select/idle');
  });

  it('hears nothing more once it is unwired', () => {
    const r = rig();
    r.unwire();
    r.pointer('pointerdown', 3, 1);
    expect(r.controller.phase).toBe('select/idle');
  });
});

describe('the wiring of the keyboard', () => {
  it('uses a key once and says so', () => {
    const r = rig({ selection: { nodes: ['n4'], segments: [] } });
    expect(r.key('ArrowRight').defaultPrevented).toBe(true);
    expect(r.at('n4')?.[0]).toBeCloseTo(3.01, 12);
  });

  it('leaves a key that no tool uses', () => {
    expect(rig().key('q').defaultPrevented).toBe(false);
  });

  it('leaves a key while letters are being composed', () => {
    const r = rig({ selection: { nodes: ['n4'], segments: [] } });
    expect(r.key('ArrowRight', { isComposing: true }).defaultPrevented).toBe(false);
  });
});

describe('a key is heard', () => {
  const target = (tagName: string, selector = '') =>
    ({
      tagName,
      closest: (list: string) => (list.split(', ').includes(selector) ? {} : null),
    }) as unknown as EventTarget;

  it('by the tools with a sheet or nothing in focus', () => {
    expect(hearsKeys(target('DIV', '[data-sheet]'), 'Tab')).toBe(true);
    expect(hearsKeys(target('BODY'), 'Enter')).toBe(true);
  });

  it.each(['input', 'textarea', '[role="dialog"]', '[role="menu"]'])('not from within %s', (selector) => {
    expect(hearsKeys(target('X', selector), '5')).toBe(false);
  });

  it('from a button only where it does not work the button', () => {
    expect(hearsKeys(target('BUTTON'), 'Enter')).toBe(false);
    expect(hearsKeys(target('BUTTON'), '5')).toBe(true);
  });
});

describe('a finger', () => {
  const touch = { pointerType: 'touch', pointerId: 5 };

  it('that rests asks for the menu of what is under it and drops what it had begun', () => {
    const r = rig();
    const { job } = r.board.getState();
    r.pointer('pointerdown', 3, 1, touch);
    r.ring();
    expect(r.menus.map(({ items }) => items[0])).toEqual([{ kind: 'node', id: 'n3' }]);
    r.pointer('pointermove', 4, 1, touch);
    r.pointer('pointerup', 4, 1, touch);
    r.tick();
    expect(r.board.getState().job).toBe(job);
    expect(r.controller.pressed).toBe(false);
  });

  it('that moves asks for none, nor one that is lifted, nor one with a second beside it', () => {
    const r = rig();
    r.pointer('pointerdown', 3, 1, touch);
    r.pointer('pointermove', 3.3, 1, touch);
    r.ring();
    r.pointer('pointerup', 3.3, 1, touch);
    r.pointer('pointerdown', 3, 3, touch);
    r.pointer('pointerup', 3, 3, touch);
    r.ring();
    r.pointer('pointerdown', 3, 3, touch);
    r.pointer('pointerdown', 4, 3, { ...touch, pointerId: 6 });
    r.ring();
    expect(r.menus).toEqual([]);
  });

  it('takes hold from farther away than a mouse does', () => {
    const r = rig();
    r.pointer('pointerdown', 3.14, 3.1, touch);
    r.pointer('pointerup', 3.14, 3.1, touch);
    expect(r.board.getState().selection.nodes).toEqual(['n4']);
    r.pointer('pointerdown', 5, 5);
    r.pointer('pointerup', 5, 5);
    r.pointer('pointerdown', 3.14, 3.1);
    r.pointer('pointerup', 3.14, 3.1);
    expect(r.board.getState().selection.nodes).toEqual([]);
  });
});

describe('a palm', () => {
  const palm = { pointerType: 'touch', pointerId: 9 };

  it('is told by its size', () => {
    const r = rig();
    r.pointer('pointerdown', 3, 1, { ...palm, width: 90, height: 70 });
    r.pointer('pointerup', 3, 1, { ...palm, width: 90, height: 70 });
    expect(r.board.getState().selection.nodes).toEqual([]);
  });

  it('means nothing while a pen is near, and a finger does once the pen is away', () => {
    const r = rig();
    r.pointer('pointermove', 2, 2, { pointerType: 'pen', pointerId: 7, button: -1 });
    r.pointer('pointerdown', 3, 1, palm);
    r.pointer('pointermove', 4, 1, palm);
    r.pointer('pointerup', 4, 1, palm);
    r.tick();
    expect(r.board.getState().selection.nodes).toEqual([]);
    expect(r.board.getState().undoLabel).toBeNull();
    r.wait(1000);
    r.pointer('pointerdown', 3, 1, palm);
    r.pointer('pointerup', 3, 1, palm);
    expect(r.board.getState().selection.nodes).toEqual(['n3']);
  });

  it('that came down before the pen loses what it had begun', () => {
    const r = rig();
    r.pointer('pointerdown', 3, 1, palm);
    r.pointer('pointermove', 4, 1, palm);
    r.pointer('pointerdown', 3, 3, { pointerType: 'pen', pointerId: 7 });
    r.pointer('pointerup', 3, 3, { pointerType: 'pen', pointerId: 7 });
    expect(r.board.getState().undoLabel).toBeNull();
    expect(r.board.getState().selection.nodes).toEqual(['n4']);
  });
});

describe('a right click', () => {
  it('asks for the menu of what is under it', () => {
    const r = rig();
    const event = r.pointer('contextmenu', 3, 3, { button: 2 });
    expect(event.defaultPrevented).toBe(true);
    expect(r.menus.map(({ items }) => items[0])).toEqual([{ kind: 'node', id: 'n4' }]);
  });

  it('in the middle of a drag drops it', () => {
    const r = rig();
    r.pointer('pointerdown', 3, 1);
    r.pointer('pointermove', 4, 1);
    r.pointer('contextmenu', 4, 1, { button: 2 });
    r.pointer('pointerup', 4, 1);
    expect(r.board.getState().undoLabel).toBeNull();
  });
});
