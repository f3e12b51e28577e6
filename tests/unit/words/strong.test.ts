import { expect, it } from 'vitest';
import { stressed, strong } from '../../../src/words/strong.ts';

it('finds the stressed parts of a text again', () => {
  expect(stressed(`Pick the ${strong('hood')} tool`)).toEqual([
    { text: 'Pick the ', strong: false },
    { text: 'hood', strong: true },
    { text: ' tool', strong: false },
  ]);
});

it('leaves a text without stress whole', () => {
  expect(stressed('Draw a route')).toEqual([{ text: 'Draw a route', strong: false }]);
});

it('stresses a text that is nothing else', () => {
  expect(stressed(strong('hood'))).toEqual([{ text: 'hood', strong: true }]);
});
