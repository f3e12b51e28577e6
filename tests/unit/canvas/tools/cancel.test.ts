import { describe, expect, it } from 'vitest';
import type { ToolId } from '../../../../src/canvas/board.ts';
import type { SheetId } from '../../../../src/graph/sheet.ts';
import { type Driver, drive, furnishedJob } from '../driver.ts';

type Point = readonly [number, number];

interface Case {
  readonly phase: string;
  readonly tool?: ToolId;
  readonly sheet?: SheetId;
  /** Brings the tool to the middle of the phase. */
  readonly begin: (driver: Driver, on: SheetId) => void;
}

const press =
  (at: Point, ...path: Point[]) =>
  (driver: Driver, on: SheetId) => {
    driver.press(on, ...at);
    for (const point of path) driver.move(on, ...point);
  };
const clicks =
  (...points: Point[]) =>
  (driver: Driver, on: SheetId) => {
    for (const point of points.slice(0, -1)) driver.click(on, ...point);
    const last = points.at(-1);
    if (last) driver.move(on, ...last);
  };
/** Selects what is at a point first, as a person would. */
const selected = (at: Point, begin: Case['begin']) => (driver: Driver, on: SheetId) => {
  driver.click(on, ...at);
  begin(driver, on);
};

const cases: readonly Case[] = [
  { phase: 'select/pressing', begin: press([3, 1]) },
  { phase: 'select/moving', begin: press([3, 1], [3.4, 1.2]) },
  { phase: 'select/moving', begin: selected([3, 1], (d) => void d.key('m')) },
  { phase: 'select/boxing', begin: press([5.5, 5.5], [0, 0]) },
  { phase: 'select/bending', begin: selected([3, 1], press([2.894, 1.106], [2.7, 1.3])) },
  { phase: 'select/bending', begin: selected([3, 1], (d) => d.type('r30')) },
  { phase: 'select/resizing', begin: selected([4.5, 4.5], press([5, 5], [5.3, 5.3])) },
  { phase: 'select/sliding', begin: press([2, 1], [2.4, 1]) },
  { phase: 'select/pulling', begin: press([2, 0.2], [2, -0.4]) },
  { phase: 'box/corner', tool: 'block', begin: press([0, 4], [1, 5]) },
  { phase: 'box/corner', tool: 'exit', sheet: 'section-x', begin: clicks([0, 4], [1, 5]) },
  {
    phase: 'box/repeating',
    begin: selected([4.5, 4.5], (d, on) => {
      d.key('Enter', { shift: true });
      d.move(on, 7, 4.5);
    }),
  },
  { phase: 'join/second', tool: 'join', begin: clicks([3, 3], [1, 1]) },
  { phase: 'dimension/second', tool: 'dimension', begin: clicks([1, 1], [2, 2]) },
  { phase: 'dimension/line', tool: 'dimension', begin: clicks([1, 1], [3, 1], [2, 2]) },
  { phase: 'measure/second', tool: 'measure', begin: clicks([1, 1], [2, 2]) },
  { phase: 'draw/leg', tool: 'draw', begin: clicks([3, 3], [4, 3]) },
];

describe('a gesture in the middle of', () => {
  for (const { phase, tool = 'select', sheet = 'floor', begin } of cases) {
    const rig = () => {
      const driver = drive(furnishedJob(), { tool });
      begin(driver, sheet);
      expect(driver.controller.phase).toBe(phase);
      return driver;
    };

    it(`${phase} is dropped without a trace when the pointer is lost`, () => {
      const driver = rig();
      const { job } = driver.board.getState();
      const { solution } = drive(job).board.getState();
      driver.controller.cancel();
      const after = driver.board.getState();
      expect(after.job).toBe(job);
      expect(after.live).toBe(job);
      expect(after.solution.speeds).toEqual(solution.speeds);
      expect(after.undoLabel).toBeNull();
      expect(driver.controller.phase).not.toBe(phase);
    });

    it(`${phase} is dropped by Escape`, () => {
      const driver = rig();
      const { job } = driver.board.getState();
      driver.key('Escape');
      const after = driver.board.getState();
      expect(after.job).toBe(job);
      expect(after.live).toBe(job);
      expect(after.undoLabel).toBeNull();
    });

    it(`${phase} gives way to another tool`, () => {
      const driver = rig();
      const { job } = driver.board.getState();
      driver.board.set({ tool: tool === 'pan' ? 'select' : 'pan' });
      expect(driver.board.getState().live).toBe(job);
      expect(driver.shapes(sheet)).toEqual([]);
    });
  }
});
