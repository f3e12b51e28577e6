import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ToolId } from '../../src/canvas/board.ts';
import { job as jobSchema } from '../../src/graph/document.ts';
import type { SheetId } from '../../src/graph/sheet.ts';
import { type Driver, drive, furnishedJob } from '../unit/canvas/driver.ts';

const sheet = fc.constantFrom<SheetId>('floor', 'section-x', 'section-y');
const tool = fc.constantFrom<ToolId>(
  ...(['select', 'draw', 'hood', 'cap', 'insert', 'pan', 'part', 'split', 'join'] as const),
  ...(['block', 'exit', 'dimension', 'note', 'measure'] as const),
);
/** Places that often meet the nodes and legs of the drawing. */
const place = fc.oneof(
  fc.constantFrom<[number, number]>(
    ...([
      [1, 1],
      [3, 1],
      [3, 3],
      [2, 1],
      [1, 2.4],
      [3, 2.4],
      [1, 1.8],
    ] as [number, number][]),
    // The grip of a bend, a block and its corner, the dimension, the note, the wall.
    ...([
      [2.894, 1.106],
      [4.5, 4.5],
      [5, 5],
      [2, 0.2],
      [-0.4, 2.95],
      [2, 6.1],
    ] as [number, number][]),
  ),
  fc
    .tuple(fc.integer({ min: -10, max: 60 }), fc.integer({ min: -10, max: 60 }))
    .map(([u, v]): [number, number] => [u / 10, v / 10]),
);
const held = fc.record({ shift: fc.boolean(), alt: fc.boolean() });
const keys = fc.constantFrom(
  ...[
    'Escape',
    'Enter',
    'Backspace',
    'Delete',
    'Tab',
    'ArrowLeft',
    'ArrowUp',
    'F10',
    'u',
    'd',
    'c',
    'm',
    'r',
    '1',
    '2',
    '5',
    '.',
  ],
);

type Gesture = (driver: Driver) => void;
const gesture: fc.Arbitrary<Gesture> = fc.oneof(
  fc.tuple(sheet, place, held).map(
    ([on, [u, v], more]): Gesture =>
      (d) =>
        d.click(on, u, v, more),
  ),
  fc.tuple(sheet, place).map(
    ([on, [u, v]]): Gesture =>
      (d) =>
        d.doubleClick(on, u, v),
  ),
  fc.tuple(sheet, place, place, held).map(
    ([on, a, b, more]): Gesture =>
      (d) =>
        d.drag(on, a, b, more),
  ),
  fc.tuple(sheet, place, place).map(
    ([on, a, b]): Gesture =>
      (d) => {
        d.press(on, a[0], a[1]);
        d.move(on, b[0], b[1]);
        d.controller.cancel();
      },
  ),
  fc.tuple(sheet, place).map(
    ([on, [u, v]]): Gesture =>
      (d) =>
        d.move(on, u, v),
  ),
  fc.array(keys, { minLength: 1, maxLength: 4 }).map(
    (list): Gesture =>
      (d) => {
        for (const key of list) d.key(key, { shift: key === 'F10' });
      },
  ),
  fc.constantFrom('2', '+1', '1.5 m', 'Words', '', '-9').map(
    (text): Gesture =>
      (d) => {
        if (d.asks.length > 0) d.answer(text);
      },
  ),
  fc.tuple(sheet, place).map(
    ([on, [u, v]]): Gesture =>
      (d) => {
        d.move(on, u, v);
        d.key('Enter', { shift: true });
      },
  ),
  tool.map(
    (id): Gesture =>
      (d) =>
        d.board.set({ tool: id }),
  ),
  fc.constantFrom<Gesture>(
    (d) => d.board.undo(),
    (d) => d.board.redo(),
    (d) => d.controller.out(),
  ),
);

describe('random gestures', () => {
  it('undone one by one give back the exact first document, and redone the last', () => {
    fc.assert(
      fc.property(fc.array(gesture, { minLength: 1, maxLength: 25 }), (gestures) => {
        const first = furnishedJob();
        const text = JSON.stringify(first);
        const driver = drive(first);
        for (const act of gestures) act(driver);
        driver.controller.cancel();
        driver.board.set({ tool: 'select' });
        const last = driver.board.getState().job;
        let steps = 0;
        for (; driver.board.getState().undoLabel !== null; steps += 1) driver.board.undo();
        expect(JSON.stringify(driver.board.getState().job)).toBe(text);
        for (let i = 0; i < steps; i += 1) driver.board.redo();
        expect(JSON.stringify(driver.board.getState().job)).toBe(JSON.stringify(last));
      }),
      { numRuns: 150 },
    );
  });

  it('leave a document that the schema accepts, whose ends exist, and no preview behind', () => {
    fc.assert(
      fc.property(fc.array(gesture, { minLength: 1, maxLength: 25 }), (gestures) => {
        const driver = drive(furnishedJob());
        for (const act of gestures) act(driver);
        driver.controller.cancel();
        driver.board.set({ tool: 'select' });
        const { job, live } = driver.board.getState();
        expect(live).toBe(job);
        expect(jobSchema.safeParse(job).error).toBeUndefined();
        const ids = new Set(driver.scheme.nodes.map(({ id }) => id));
        for (const { from, to } of driver.scheme.segments) {
          expect(ids.has(from) && ids.has(to)).toBe(true);
          expect(from).not.toBe(to);
        }
      }),
      { numRuns: 150 },
    );
  });

  it('cancelled half way change nothing', () => {
    fc.assert(
      fc.property(
        tool,
        sheet,
        place,
        fc.array(place, { minLength: 1, maxLength: 5 }),
        (id, on, start, path) => {
          const driver = drive(furnishedJob(), { tool: id });
          const { job, solution, selection } = driver.board.getState();
          driver.press(on, start[0], start[1]);
          for (const [u, v] of path) driver.move(on, u, v);
          driver.controller.cancel();
          const after = driver.board.getState();
          expect(after.job).toBe(job);
          expect(after.live).toBe(job);
          expect(after.solution).toBe(solution);
          expect(after.selection).toBe(selection);
          expect(after.undoLabel).toBeNull();
        },
      ),
      { numRuns: 200 },
    );
  });
});
