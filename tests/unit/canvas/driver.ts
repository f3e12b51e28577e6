import { type AppStore, createBoard } from '../../../src/app/store.ts';
import type { BoardSettings } from '../../../src/canvas/board.ts';
import type { ActiveShape } from '../../../src/canvas/sheet-handle.ts';
import type { FieldAsk, MenuAsk } from '../../../src/canvas/tools/ask.ts';
import { createToolController, type ToolController } from '../../../src/canvas/tools/controller.ts';
import {
  type Modifiers,
  noModifiers,
  type PointerInput,
  type PointerKind,
  type Surface,
} from '../../../src/canvas/tools/tool.ts';
import { toScreen, type Viewport } from '../../../src/drawing/viewport.ts';
import type { Job, Node, Scheme } from '../../../src/graph/document.ts';
import type { SheetId } from '../../../src/graph/sheet.ts';
import { emptyJob } from '../../../src/graph/templates.ts';

/** Where on a sheet, m, and what else is held. */
export interface Where {
  readonly clicks?: number;
  readonly button?: number;
  readonly shift?: boolean;
  readonly alt?: boolean;
  readonly mod?: boolean;
  readonly pointerType?: PointerKind;
}

export interface Driver {
  readonly board: AppStore;
  readonly controller: ToolController;
  readonly said: string[];
  /** Fields that the tools have opened; `null` where one was closed. */
  readonly asks: (FieldAsk | null)[];
  readonly menus: MenuAsk[];
  move(sheet: SheetId, u: number, v: number, more?: Where): void;
  press(sheet: SheetId, u: number, v: number, more?: Where): void;
  release(sheet: SheetId, u: number, v: number, more?: Where): void;
  click(sheet: SheetId, u: number, v: number, more?: Where): void;
  doubleClick(sheet: SheetId, u: number, v: number, more?: Where): void;
  /** Presses, moves in three steps and lets go. */
  drag(sheet: SheetId, from: readonly [number, number], to: readonly [number, number], more?: Where): void;
  key(key: string, modifiers?: Partial<Modifiers>): boolean;
  type(text: string): void;
  shapes(sheet: SheetId): readonly ActiveShape[];
  view(sheet: SheetId): Viewport;
  readonly scheme: Scheme;
  node(id: string): Node;
  undoSteps(): string[];
  /** Answers the field that was opened last; gives its complaint. */
  answer(text: string): string | null;
}

/** All sheets at 100 px a metre, over a real store, with no DOM. */
export function drive(job: Job = emptyJob('metric'), settings: Partial<BoardSettings> = {}): Driver {
  const board = createBoard(job, { settings });
  const said: string[] = [];
  const asks: (FieldAsk | null)[] = [];
  const menus: MenuAsk[] = [];
  const controller = createToolController(board, {
    announce: (text) => said.push(text),
    ask: (field) => asks.push(field),
    menu: (menu) => menus.push(menu),
  });
  const views = new Map<SheetId, Viewport>();
  const shown = new Map<SheetId, readonly ActiveShape[]>();
  for (const sheet of ['floor', 'section-x', 'section-y'] as const) {
    views.set(sheet, { scale: 100, panX: 100, panY: 500 });
    controller.attach(surface(sheet, views, shown));
  }
  const view = (sheet: SheetId) => views.get(sheet) as Viewport;
  const input = (sheet: SheetId, u: number, v: number, more: Where, button: number): PointerInput => ({
    sheet,
    point: { u, v },
    screen: toScreen({ u, v }, view(sheet)),
    modifiers: { shift: more.shift ?? false, alt: more.alt ?? false, mod: more.mod ?? false },
    button,
    pointerType: more.pointerType ?? 'mouse',
    clicks: more.clicks ?? 1,
  });

  const driver: Driver = {
    board,
    controller,
    said,
    asks,
    menus,
    move: (sheet, u, v, more = {}) => controller.move(input(sheet, u, v, more, -1)),
    press: (sheet, u, v, more = {}) => controller.down(input(sheet, u, v, more, more.button ?? 0)),
    release: (sheet, u, v, more = {}) => controller.up(input(sheet, u, v, more, more.button ?? 0)),
    click(sheet, u, v, more = {}) {
      driver.move(sheet, u, v, more);
      driver.press(sheet, u, v, more);
      driver.release(sheet, u, v, more);
    },
    doubleClick(sheet, u, v, more = {}) {
      driver.click(sheet, u, v, more);
      driver.press(sheet, u, v, { ...more, clicks: 2 });
      driver.release(sheet, u, v, { ...more, clicks: 2 });
    },
    drag(sheet, from, to, more = {}) {
      const at = (part: number, button: number) =>
        input(sheet, from[0] + (to[0] - from[0]) * part, from[1] + (to[1] - from[1]) * part, more, button);
      const [first, ...rest] = [0, 1 / 3, 2 / 3, 1].map((part) => at(part, -1));
      const [press, release] = [at(0, more.button ?? 0), at(1, more.button ?? 0)];
      if (first) controller.move(first);
      controller.down(press);
      for (const step of rest) controller.move(step);
      controller.up(release);
    },
    key: (key, modifiers = {}) =>
      controller.key({ key, modifiers: { ...noModifiers, ...modifiers }, sheet: controller.sheet }),
    type: (text) => {
      for (const key of text) driver.key(key);
    },
    shapes: (sheet) => shown.get(sheet) ?? [],
    view,
    get scheme() {
      const { job: now, schemeId } = board.getState();
      return now.schemes.find(({ id }) => id === schemeId) as Scheme;
    },
    node(id) {
      const node = driver.scheme.nodes.find((each) => each.id === id);
      if (!node) throw new Error(`no node "${id}"`);
      return node;
    },
    answer(text) {
      const field = asks.at(-1);
      if (!field) throw new Error('no field is open');
      return field.commit(text);
    },
    undoSteps() {
      const labels: string[] = [];
      for (let label = board.getState().undoLabel; label !== null; label = board.getState().undoLabel) {
        labels.unshift(label);
        board.undo();
      }
      for (const _ of labels) board.redo();
      return labels;
    },
  };
  return driver;
}

function surface(
  sheet: SheetId,
  views: Map<SheetId, Viewport>,
  shown: Map<SheetId, readonly ActiveShape[]>,
): Surface {
  return {
    sheet,
    size: () => ({ width: 800, height: 600 }),
    viewport: () => views.get(sheet) as Viewport,
    setViewport: (view) => void views.set(sheet, view),
    fit: () => {},
    labelAt: () => null,
    labelOf: () => null,
    drawActive: (shapes) => void shown.set(sheet, shapes),
  };
}

/** A hood, a riser to a turn, and a level run to a second turn and an open end: n1 to n4, d1 to d3. */
export function bentJob(): Job {
  const job = emptyJob('metric');
  const [scheme] = job.schemes;
  if (!scheme) throw new Error('an empty job has a scheme');
  scheme.nodes = [
    { id: 'n1', at: [1, 1, 1.8], role: 'hood', hood: job.hoods[0]?.id ?? '' },
    { id: 'n2', at: [1, 1, 2.4], role: 'turn' },
    { id: 'n3', at: [3, 1, 2.4], role: 'turn' },
    { id: 'n4', at: [3, 3, 2.4], role: 'turn' },
  ];
  scheme.segments = [
    { id: 'd1', from: 'n1', to: 'n2' },
    { id: 'd2', from: 'n2', to: 'n3' },
    { id: 'd3', from: 'n3', to: 'n4' },
  ];
  return job;
}

/** The bent job in a furnished room: a chase, an exit face, a damper, a dimension and a note on the floor sheet. */
export function furnishedJob(): Job {
  const job = bentJob();
  const [scheme] = job.schemes;
  const leg = scheme?.segments.find(({ id }) => id === 'd2');
  if (!scheme || !leg) throw new Error('the bent job has a leg d2');
  leg.fittings = [{ kind: 'backdraught-damper', at: 1 }];
  job.blocks = [{ id: 'b1', name: 'Chase', kind: 'chase', min: [4, 4, 0], max: [5, 5, 2.4] }];
  job.exits = [{ id: 'x1', name: 'North wall', kind: 'wall', min: [0, 6, 0], max: [5, 6.2, 2.6] }];
  job.sheetNotes = [{ id: 'note1', sheet: 'floor', at: [-0.5, 3], text: 'Ask the builder' }];
  scheme.dimensions = [
    { id: 'dim1', sheet: 'floor', along: 'u', from: { node: 'n2' }, to: { node: 'n3' }, offset: -0.8 },
  ];
  return job;
}
