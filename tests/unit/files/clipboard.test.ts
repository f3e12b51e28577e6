import { expect, test } from 'vitest';
import { readClip, writeClip } from '../../../src/files/clipboard.ts';
import { type Clip, clip } from '../../../src/graph/edits/index.ts';
import { drawn } from '../../support/drawn.ts';

const made = clip(drawn(), 's1', { nodes: ['n1', 'n2', 'n3', 'n4'], segments: [] }) as Clip;
const changed = (change: object) => readClip(JSON.stringify({ ...made, ...change }));

test('a copy goes through the clipboard as text and comes back the same', () => {
  expect(readClip(writeClip(made))).toEqual(made);
  const bent = { ...made, bend: { kind: 'smooth', radiusRatio: 1.5 } };
  expect(readClip(writeClip(bent))).toEqual(bent);
});

test.each([
  '',
  'hello',
  '{',
  '"gentlebend-clip"',
  '{"format":"gentlebend-clip"}',
  '[{"format":"gentlebend-clip"}]',
])('text that is no copy is left alone: %s', (text) => {
  expect(readClip(text)).toBeNull();
});

test('a copy that would not stand as a drawing is refused', () => {
  expect(changed({ version: 2 })).toBeNull();
  expect(changed({ nodes: made.nodes.slice(1) })).toBeNull();
  expect(changed({ hoods: [] })).toBeNull();
  expect(changed({ segments: [{ ...made.segments[0], material: 'cardboard' }] })).toBeNull();
  expect(changed({ nodes: [{ ...made.nodes[0], at: [1, 2] }] })).toBeNull();
});
