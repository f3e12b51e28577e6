import { bench, describe } from 'vitest';
import { findRoutes } from '../../src/advice/route-search/find.ts';
import { layOut } from '../../src/advice/route-search/layout.ts';
import { type RouteQuestion, usualQuestion } from '../../src/advice/route-search/question.ts';
import { roomOf } from '../support/route-rooms.ts';

const job = roomOf(1, [12, 10, 3], 60, 5);
const question = {
  ...usualQuestion(job, 'scheme-1'),
  bend: { kind: 'five-piece', radiusRatio: 1 },
} as RouteQuestion;

describe('a 12 x 10 x 3 m space at 0.1 m with 60 blocks', () => {
  bench('laying out the grid', () => {
    layOut(job, question);
  });
  bench('the best route to the far wall', async () => {
    await findRoutes(job, { ...question, exits: ['north'], routes: 1 });
  });
  bench('four routes by three exits', async () => {
    await findRoutes(job, question);
  });
});
