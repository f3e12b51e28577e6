import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import { alikeAsOne } from '../../../src/advice/combinations/alike.ts';
import { setDuct, setNodePosition } from '../../../src/graph/edits/index.ts';
import { drawn } from '../../support/drawn.ts';

type Draft = Parameters<typeof setDuct>[0];

const wider = (job: Draft) => setDuct(job, 's1', ['d3'], { shape: 'round', diameter: 0.25 });
const moved = (job: Draft) => setNodePosition(job, 's1', 'n3', [1, 3, 2.35]);

describe('jobs that say the same', () => {
  it('are one object, in whatever order their changes were made', () => {
    const alike = alikeAsOne('s1');
    const one = alike(produce(produce(drawn(), wider), moved));
    const other = alike(produce(produce(drawn(), moved), wider));
    expect(other).toBe(one);
  });

  it('are told apart by a change of anything but another scheme', () => {
    const alike = alikeAsOne('s1');
    const job = alike(drawn());
    expect(alike(produce(job, moved))).not.toBe(job);
    const warmer = produce(job, ({ air }) => {
      air.temperature += 1;
    });
    expect(alike(warmer)).not.toBe(job);
  });
});
