import { describe, expect, it } from 'vitest';
import { type BoardState, firstKinds, nothing } from '../../../src/canvas/board.ts';
import { createPainter, layerNames, touched } from '../../../src/canvas/painter.ts';
import { solveScheme } from '../../../src/graph/solve.ts';
import { run, upAndOut } from '../drawing/drawing.ts';

const { job, route } = run(upAndOut);

const state: BoardState = {
  job,
  live: job,
  solution: solveScheme(job, route.schemeId),
  units: 'metric',
  undoLabel: null,
  redoLabel: null,
  schemeId: route.schemeId,
  tool: 'select',
  kinds: firstKinds,
  selection: nothing,
  hover: nothing,
  speed: 0,
  colourBy: 'velocity',
  section: 'section-x',
  workingHeight: 2.3,
  sectionDepth: { 'section-x': null, 'section-y': null },
  ghost: null,
  theme: 'light',
};

describe('a sheet redraws', () => {
  it('nothing of the floor for a tool, a working height or an undo label', () => {
    expect(touched({ ...state, tool: 'draw', workingHeight: 3, undoLabel: 'Move' }, state, 'floor')).toEqual(
      [],
    );
  });

  it('its overlay alone for what is pointed at or selected', () => {
    const one = { nodes: ['n1'], segments: [] };
    expect(touched({ ...state, hover: one }, state, 'floor')).toEqual(['overlay']);
    expect(touched({ ...state, selection: one }, state, 'floor')).toEqual(['overlay']);
  });

  it('ducts and overlay, not the background, while a turn is dragged', () => {
    const live = structuredClone(job);
    const turn = live.schemes[0]?.nodes[1];
    if (turn) turn.at = [1.2, 0, 2.5];
    const solution = solveScheme(live, route.schemeId);
    expect(
      touched(
        {
          ...state,
          live: {
            ...live,
            kitchen: job.kitchen,
            blocks: job.blocks,
            exits: job.exits,
            underlays: job.underlays,
          },
          solution,
        },
        state,
        'floor',
      ),
    ).toEqual(['ducts', 'overlay']);
  });

  it('ducts and overlay for another speed or other colours', () => {
    expect(touched({ ...state, speed: 1 }, state, 'floor')).toEqual(['ducts', 'overlay']);
    expect(touched({ ...state, colourBy: 'loss' }, state, 'floor')).toEqual(['ducts', 'overlay']);
  });

  it('a section’s overlay for another working height, whose mark stands on it', () => {
    expect(touched({ ...state, workingHeight: 3 }, state, 'section-x')).toEqual(['overlay']);
  });

  it('a section whose plane moves, and no other sheet', () => {
    const moved = { ...state, sectionDepth: { 'section-x': 1, 'section-y': null } };
    expect(touched(moved, state, 'section-x')).toEqual(['background', 'ducts', 'overlay']);
    expect(touched(moved, state, 'section-y')).toEqual([]);
    expect(touched(moved, state, 'floor')).toEqual([]);
  });

  it('everything for another theme', () => {
    expect(touched({ ...state, theme: 'dark' }, state, 'floor')).toEqual(layerNames);
  });
});

describe('the extent of a drawing', () => {
  it('holds every node, the floor and the ceiling on a section', () => {
    const bounds = createPainter('section-x').extent(state);
    expect(bounds.minV).toBeLessThanOrEqual(0);
    expect(bounds.maxV).toBeGreaterThanOrEqual(job.kitchen.ceilingHeight);
    for (const node of route.nodes.values()) {
      expect(bounds.minU).toBeLessThanOrEqual(node.at[0]);
      expect(bounds.maxU).toBeGreaterThanOrEqual(node.at[0]);
    }
  });

  it('has room to begin in where nothing is drawn', () => {
    const empty = structuredClone(job);
    const scheme = empty.schemes[0];
    if (scheme) [scheme.nodes, scheme.segments] = [[], []];
    const solution = solveScheme(empty, route.schemeId);
    const bounds = createPainter('floor').extent({ ...state, job: empty, live: empty, solution });
    expect(bounds.maxU - bounds.minU).toBeGreaterThan(2);
    expect(bounds.maxV - bounds.minV).toBeGreaterThan(2);
  });
});
