import { describe, expect, test } from 'vitest';
import { directionWords } from '../../../src/graph/directions.ts';
import type { Job } from '../../../src/graph/document.ts';
import * as edits from '../../../src/graph/edits/index.ts';
import { inferRoute } from '../../../src/graph/infer.ts';
import { neighbour, type Stop, traceRoute, type Way } from '../../../src/graph/trace.ts';
import { drawn, edited } from '../../support/drawn.ts';

describe('directions in words', () => {
  test.each([
    [[0, 0, 1], 'up'],
    [[0.05, 0, -1], 'down'],
    [[0, 3, 0], 'north'],
    [[-1, 0, 0], 'west'],
    [[2, 0.9, 0], 'east-northeast'],
    [[1, -1, 0], 'southeast'],
    [[0, -1, 1], 'south, sloping up'],
    [[1, 0, -0.1], 'east, sloping down'],
    [[1, 0, 0.01], 'east'],
    [[1, -0.05, 0], 'east'],
    [[0, 0, 0], ''],
  ] as const)('%j is %s', (direction, words) => {
    expect(directionWords([...direction])).toBe(words);
  });
});

describe('a route as a table', () => {
  const bent = edited((job) => {
    edits.setBend(job, 's1', 'n3', { kind: 'three-piece', radiusRatio: 1.5 });
    edits.setBend(job, 's1', 'n2', { kind: 'mitred' });
    edits.setDuct(job, 's1', ['d3'], { shape: 'round', diameter: 0.1524 });
    edits.setInsulation(job, 's1', ['d3'], 0.0254);
    edits.setTransition(job, 's1', 'n3', { kind: 'conical', angle: 30 });
  }).job;

  test('follows the air, node and leg in turn', () => {
    expect(traceRoute(bent, 's1').map(({ id }) => id)).toEqual(['n1', 'd1', 'n2', 'd2', 'n3', 'd3', 'n4']);
  });

  test('says everything in words', () => {
    expect(traceRoute(bent, 's1').map(({ words }) => words)).toEqual([
      'the hood: Invented hood, 8" round collar',
      'the leg from the hood to turn 1: 1\'-11 5/8" up, 8" round, galvanized steel',
      'turn 1: 90° to the north, mitred',
      'the leg from turn 1 to turn 2: 6\'-6 3/4" north, 8" round, galvanized steel',
      'turn 2: 90° to the east, r/D 1.5, three-piece; 8" round to 6" round, conical 30°',
      'the leg from turn 2 to the cap: 9\'-10 1/8" east, 6" round, galvanized steel, 1" insulation',
      'the cap: wall cap with a flap',
    ]);
  });

  test('follows the air whichever way the legs were drawn', () => {
    const { job } = edited((draft) => {
      edits.reverseSegment(draft, 's1', 'd2');
      draft.schemes[0]?.segments.reverse();
    }, bent);
    expect(traceRoute(job, 's1').map(({ words }) => words)).toEqual(
      traceRoute(bent, 's1').map(({ words }) => words),
    );
  });

  test('names a junction once, where it is met first, and loose nodes last', () => {
    const { job } = edited((draft) => {
      edits.branchFrom(draft, 's1', 'd3', 0.5, [2.5, 5, 2.35]);
      edits.addNode(draft, 's1', [9, 9, 0]);
    });
    const rows = traceRoute(job, 's1');
    expect(rows.filter(({ id }) => id === 'n5').map(({ words }) => words)).toEqual([
      'the junction: 3 ducts divide',
    ]);
    expect(rows.at(-1)).toMatchObject({ kind: 'node', words: 'a loose point', from: [], to: [] });
    expect(new Set(rows.map(({ id }) => id)).size).toBe(rows.length);
  });

  test('is not made again for the same scheme', () => {
    expect(traceRoute(bent, 's1')).toBe(traceRoute(bent, 's1'));
  });
});

describe('travel along a route', () => {
  const travel = (job: Job, from: Stop, ways: Way[]) => {
    const route = inferRoute(job, 's1');
    return ways.map((way) => {
      const next = neighbour(route, from, way);
      return next?.id ?? null;
    });
  };
  const branched = edited((job) => edits.branchFrom(job, 's1', 'd3', 0.5, [2.5, 5, 2.35])).job;

  test('goes with the air from stop to stop until the end', () => {
    const route = inferRoute(drawn(), 's1');
    const met: string[] = [];
    for (let at: Stop | null = { kind: 'node', id: 'n1' }; at; at = neighbour(route, at, 'downstream'))
      met.push(at.id);
    expect(met).toEqual(['n1', 'd1', 'n2', 'd2', 'n3', 'd3', 'n4']);
  });

  test('back comes to where it came from', () => {
    expect(travel(drawn(), { kind: 'node', id: 'n3' }, ['upstream', 'downstream', 'branch'])).toEqual([
      'd2',
      'd3',
      null,
    ]);
    expect(travel(drawn(), { kind: 'segment', id: 'd2' }, ['upstream', 'downstream', 'branch'])).toEqual([
      'n2',
      'n3',
      null,
    ]);
  });

  test('goes straight on at a junction, and the other way by the branch', () => {
    expect(travel(branched, { kind: 'node', id: 'n5' }, ['upstream', 'downstream', 'branch'])).toEqual([
      'd3',
      'd4',
      'd5',
    ]);
  });

  test('goes round the legs of a junction from one of them', () => {
    const route = inferRoute(branched, 's1');
    const met: string[] = [];
    let at: Stop = { kind: 'segment', id: 'd3' };
    for (let i = 0; i < 3; i += 1) {
      at = neighbour(route, at, 'branch') ?? at;
      met.push(at.id);
    }
    expect(met.at(-1)).toBe('d3');
    expect(met.toSorted()).toEqual(['d3', 'd4', 'd5']);
  });

  test('from what is not there goes nowhere', () => {
    expect(travel(drawn(), { kind: 'node', id: 'n9' }, ['upstream', 'downstream', 'branch'])).toEqual([
      null,
      null,
      null,
    ]);
  });
});
