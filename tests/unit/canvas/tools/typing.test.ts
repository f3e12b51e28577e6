import { describe, expect, it } from 'vitest';
import {
  erase,
  nextField,
  type Typing,
  typedAngle,
  typedLength,
  typeKey,
  untyped,
} from '../../../../src/canvas/tools/draw/typing.ts';

function type(text: string, start: Typing = untyped): Typing {
  return [...text].reduce((typing, key) => typeKey(typing, key) ?? typing, start);
}

const angleField = nextField(untyped);

describe('typing a leg', () => {
  it('begins with a digit or a point, not with a letter', () => {
    expect(typeKey(untyped, 'm')).toBeNull();
    expect(typeKey(untyped, '.')?.length).toBe('.');
  });

  it.each([
    ['1.02 m', 1.02],
    ['40 1/2"', 40.5 * 0.0254],
    ["3'", 0.9144],
    ['3\'-4½"', 1.0287],
    ['½"', 0.0127],
    [',5 m', 0.5],
    ['1,02 m', 1.02],
    ['3′ 4″', 1.016],
  ])('takes %s', (text, metres) => {
    const typed = typedLength(type(text), 'imperial');
    expect(typed.kind === 'value' && typed.value).toBeCloseTo(metres, 12);
  });

  it('takes an angle with a decimal comma', () => {
    expect(typedAngle(type('22,5', angleField))).toEqual({ kind: 'value', value: 22.5 });
  });

  it('leaves U and D free for up and down', () => {
    expect(typeKey(type('24'), 'u')).toBeNull();
    expect(typeKey(type('24'), 'd')).toBeNull();
  });

  it('says what is wrong with a text that is no length', () => {
    const typed = typedLength(type('12 zz'), 'metric');
    expect(typed.kind === 'bad' && typed.message).toContain('12 zz');
  });

  it.each(['0', '2000 m'])('refuses %s', (text) => {
    expect(typedLength(type(text), 'metric').kind).toBe('bad');
  });

  it('brings an angle into one turn', () => {
    expect(typedAngle(type('-90', angleField))).toEqual({ kind: 'value', value: 270 });
    expect(typedAngle(type('405', angleField))).toEqual({ kind: 'value', value: 45 });
  });

  it('erases the field from its end, then steps back to the length', () => {
    let typing: Typing | null = type('4', nextField(type('12')));
    const steps: unknown[] = [];
    while (typing) {
      steps.push([typing.field, typing.length, typing.angle]);
      typing = erase(typing);
    }
    expect(steps).toEqual([
      ['angle', '12', '4'],
      ['angle', '12', ''],
      ['length', '12', ''],
      ['length', '1', ''],
      ['length', '', ''],
    ]);
  });

  it('asks no angle of a riser', () => {
    const riser = { ...untyped, rise: 1 } as const;
    expect(nextField(riser)).toBe(riser);
  });
});
