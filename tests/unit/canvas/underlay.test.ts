import { describe, expect, it } from 'vitest';
import type { Bitmap, BitmapMaker } from '../../../src/canvas/bitmaps.ts';
import { drawUnderlays } from '../../../src/canvas/draw-underlay.ts';
import { touched } from '../../../src/canvas/painter.ts';
import type { Pen } from '../../../src/canvas/pen.ts';
import { createPictures, levelFor } from '../../../src/canvas/pictures.ts';
import { palettes, type Theme } from '../../../src/drawing/palette.ts';
import type { Underlay } from '../../../src/graph/document.ts';
import { drive } from './driver.ts';

const bitmap = (width: number, height: number, name: string): Bitmap =>
  ({ source: name as unknown as CanvasImageSource, width, height, close: () => {} }) satisfies Bitmap;

/** Pictures of 4000 × 2000 pixels, called by their width. */
const maker: BitmapMaker = {
  decode: (image) =>
    image.endsWith('broken')
      ? Promise.reject(new Error('broken'))
      : Promise.resolve({
          pixels: bitmap(4000, 2000, '4000'),
          lines: image.endsWith('lines') ? bitmap(4000, 2000, 'lines') : null,
        }),
  halve: ({ width, height }) => Promise.resolve(bitmap(width / 2, height / 2, String(width / 2))),
  invert: ({ width, height }) => bitmap(width, height, `inverted ${width}`),
};

/** 4 m by 2 m with its lower left corner at the origin. */
const scan: Underlay = {
  id: 'u1',
  sheet: 'floor',
  image: 'data:image/png;base64,scan',
  size: [4000, 2000],
  at: [0, 0],
  scale: 0.001,
  opacity: 0.5,
};

const size = { width: 800, height: 400 };

interface Drawn {
  readonly alpha: number;
  readonly picture: string;
  readonly from: readonly number[];
  readonly to: readonly number[];
}

function penOf() {
  const drawn: Drawn[] = [];
  const words: string[] = [];
  const known: Record<string, unknown> = {
    drawImage: (picture: string, ...numbers: number[]) =>
      drawn.push({
        alpha: known.globalAlpha as number,
        picture,
        from: numbers.slice(0, 4),
        to: numbers.slice(4),
      }),
    fillText: (text: string) => words.push(text),
  };
  const pen = new Proxy(known, { get: (of, name) => of[String(name)] ?? (() => undefined) });
  return { pen: pen as unknown as Pen, drawn, words };
}

async function draw(
  underlay: Partial<Underlay> = {},
  view = { scale: 100, panX: 0, panY: 200 },
  theme: Theme = 'light',
) {
  const pictures = createPictures(maker);
  const laid = { ...scan, ...underlay };
  const look = { pictures, palette: palettes[theme], theme, ratio: 1 };
  const pass = () => {
    const { pen, drawn, words } = penOf();
    drawUnderlays(pen, [laid], 'floor', look, view, size);
    return { drawn, words };
  };
  const first = pass();
  await new Promise((done) => setTimeout(done));
  return { first, ...pass(), stats: pictures.stats() };
}

describe('an underlay', () => {
  it('is drawn from its lower left corner, at its scale and opacity', async () => {
    const { drawn } = await draw({ at: [1, 0.5] });
    expect(drawn).toEqual([
      { alpha: 0.5, picture: '500', from: [0, 62.5, 500, 187.5], to: [100, 0, 400, 150] },
    ]);
  });

  it('far away is drawn from few of its pixels, near from all of them', async () => {
    const picture = async (scale: number) =>
      (await draw({}, { scale, panX: 0, panY: 200 })).drawn[0]?.picture;
    expect(await picture(50)).toBe('250');
    expect(await picture(101)).toBe('500');
    expect(await picture(300)).toBe('2000');
    expect(await picture(900)).toBe('4000');
  });

  it('is drawn only as far as it is in view', async () => {
    const { drawn } = await draw({}, { scale: 2000, panX: -1000, panY: 1000 });
    expect(drawn).toEqual([
      { alpha: 0.5, picture: '4000', from: [500, 1500, 400, 200], to: [0, 0, 800, 400] },
    ]);
  });

  it('is neither decoded nor drawn while it is out of view or on another sheet', async () => {
    for (const change of [{ at: [50, 0] as [number, number] }, { sheet: 'section-x' as const }]) {
      const { drawn, stats } = await draw(change);
      expect([drawn, stats]).toEqual([[], { decodes: 0, draws: 0 }]);
    }
  });

  it('shows where it will be until it is there', async () => {
    const { first, drawn } = await draw();
    expect([first.drawn.length, drawn.length]).toEqual([0, 1]);
  });

  it('of lines stays sharp when it is near', async () => {
    const image = 'data:image/svg+xml;base64,lines';
    expect((await draw({ image }, { scale: 3000, panX: 0, panY: 200 })).drawn[0]?.picture).toBe('lines');
    expect((await draw({ image })).drawn[0]?.picture).toBe('500');
  });

  it('is fainter on a dark sheet, or has light and dark change places', async () => {
    const view = { scale: 100, panX: 0, panY: 200 };
    expect((await draw({}, view, 'dark')).drawn[0]).toMatchObject({ picture: '500', alpha: 0.5 * 0.45 });
    expect((await draw({ invert: true }, view, 'dark')).drawn[0]).toMatchObject({
      picture: 'inverted 500',
      alpha: 0.5,
    });
    expect((await draw({ invert: true }, view, 'light')).drawn[0]).toMatchObject({ picture: '500' });
  });

  it('that is damaged says so in its place', async () => {
    const { drawn, words } = await draw({ image: 'data:image/png;base64,broken', name: 'plan.png' });
    expect(drawn).toEqual([]);
    expect(words).toEqual(['plan.png cannot be shown: its picture is damaged.']);
  });
});

describe('pictures', () => {
  it('are decoded once, however often they are drawn', async () => {
    const pictures = createPictures(maker);
    for (let i = 0; i < 5; i++) {
      pictures.get(scan.image);
      await new Promise((done) => setTimeout(done));
    }
    expect(pictures.stats().decodes).toBe(1);
  });

  it('that have not been drawn for long make room for others', async () => {
    const pictures = createPictures(maker);
    for (let i = 0; i < 13; i++) pictures.get(`data:image/png;base64,${i}`);
    await new Promise((done) => setTimeout(done));
    expect(pictures.get('data:image/png;base64,12').state).toBe('ready');
    expect(pictures.get('data:image/png;base64,0').state).toBe('loading');
  });

  it.each([
    [2, 0],
    [1, 0],
    [0.51, 0],
    [0.5, 1],
    [0.2, 2],
    [0.001, 3],
  ])('at %f pixels of the screen for one of theirs come from level %i of four', (ratio, level) => {
    expect(levelFor(4, ratio)).toBe(level);
  });
});

it('a change of an underlay draws the background anew', () => {
  const { board } = drive();
  const before = board.getState();
  board.dispatch('place underlay', (job) => {
    job.underlays = [{ ...scan, size: [4000, 2000], at: [0, 0] }];
  });
  expect(touched(board.getState(), before, 'floor')).toContain('background');
});
