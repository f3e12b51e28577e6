import { describe, expect, it } from 'vitest';
import { actionOf, comboOf, shortcuts } from '../../../../src/canvas/tools/keys.ts';
import { noModifiers } from '../../../../src/canvas/tools/tool.ts';

const press = (key: string, modifiers = {}) => ({ key, modifiers: { ...noModifiers, ...modifiers } });

describe('the table of keys', () => {
  it('gives a combination to one action in each scope', () => {
    const combos = shortcuts.flatMap((s) => s.keys.map((key) => `${s.scope} ${key}`));
    expect(new Set(combos).size).toBe(combos.length);
  });

  it('says what every key does', () => {
    expect(shortcuts.filter(({ title }) => title.trim() === '')).toEqual([]);
  });

  it('reads a letter the same with Caps Lock on', () => {
    expect(actionOf(press('V'), 'sheets')).toBe('tool.select');
  });

  it('tells far nudges by Shift', () => {
    expect(actionOf(press('ArrowLeft', { shift: true }), 'select')).toBe('nudge.far.left');
  });

  it('takes no notice of Shift where it makes the character', () => {
    expect(comboOf(press('+', { shift: true }))).toBe('+');
  });

  it('keeps combinations with Control apart', () => {
    expect(actionOf(press('d', { mod: true }), 'sheets')).toBeUndefined();
  });
});
