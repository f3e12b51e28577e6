import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import {
  chooseFigures,
  figuresInUse,
  followFigures,
  keptFigures,
  writeAsChosen,
} from '../../../src/app/settings/figures.ts';
import { createBoard } from '../../../src/app/store.ts';
import { createUi } from '../../../src/app/ui.ts';
import { formatLength, plainChoice, plainStyle, setStyle } from '../../../src/units/index.ts';
import { exampleJob } from './kitchen.ts';

let kept: Map<string, string>;

beforeEach(() => {
  kept = new Map();
  vi.stubGlobal('localStorage', {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, text: string) => kept.set(key, text),
  });
  vi.stubGlobal('navigator', { language: 'fr-FR' });
});

afterEach(() => {
  vi.unstubAllGlobals();
  setStyle(plainStyle);
});

describe('how a reader wants figures', () => {
  it('is at first eighths of an inch, millimetres, and numbers as the browser writes them', () => {
    expect(keptFigures()).toEqual(plainChoice);
    writeAsChosen(createUi());
    expect(figuresInUse()).toEqual({ locale: 'fr-FR', inches: 8, metric: 'mm' });
  });

  it('is remembered by the browser', () => {
    chooseFigures(createUi(), { inches: 16, locale: 'de-DE' });
    expect(createUi().getState().figures).toEqual({ locale: 'de-DE', inches: 16, metric: 'mm' });
  });

  it.each([
    ['{', 'a broken text'],
    ['"de"', 'no choice'],
    ['{"locale":"no such","inches":7,"metric":"furlong"}', 'choices that there are not'],
  ])('starts over from what was kept: %s, %s', (text) => {
    kept.set('gentlebend.figures', text);
    expect(keptFigures()).toEqual(plainChoice);
  });

  it('holds at once, also where the browser keeps nothing', () => {
    vi.stubGlobal('localStorage', {
      getItem: () => {
        throw new Error('forbidden');
      },
      setItem: () => {
        throw new Error('forbidden');
      },
    });
    const ui = createUi();
    writeAsChosen(ui);
    chooseFigures(ui, { metric: 'm' });
    expect(formatLength(1.5, 'metric')).toBe('1,500 m');
  });

  it('has the board told anew without an edit', () => {
    const ui = createUi();
    writeAsChosen(ui);
    const board = createBoard(exampleJob());
    followFigures(board);
    const before = board.getState();
    const words = (state: typeof before) => state.solution.findings.map(({ message }) => message).join(' ');
    chooseFigures(ui, { locale: 'en-US' });
    const after = board.getState();
    expect(words(before)).toMatch(/\d,\d/);
    expect(words(after)).not.toMatch(/\d,\d/);
    expect(after.job).toBe(before.job);
    expect(after.undoLabel).toBeNull();
  });
});
