import { type Bitmap, type BitmapMaker, browserBitmaps } from './bitmaps.ts';

/** A decoded picture in its own size and in halves of it. */
export interface LoadedPicture {
  /** From the largest to the smallest, each half of the one before. */
  readonly levels: readonly Bitmap[];
  /** The same with light and dark in each other's place. */
  inverted(level: number): Bitmap;
  /** Lines that stay sharp at any size, for a picture made of few enough of them. */
  readonly lines: Bitmap | null;
}

export type PictureState =
  | { readonly state: 'loading' }
  | { readonly state: 'failed' }
  | { readonly state: 'ready'; readonly picture: LoadedPicture };

export interface PictureStats {
  /** Pictures decoded. */
  readonly decodes: number;
  /** Pictures drawn on a background. */
  readonly draws: number;
}

/** The pictures under the sheets, each decoded once for all sheets and zooms. */
export interface Pictures {
  /** A picture by its address, asked for at first sight. */
  get(image: string): PictureState;
  /** Told when a picture has come, or has failed. */
  subscribe(listener: () => void): () => void;
  countDraw(): void;
  stats(): PictureStats;
}

/** Pictures kept, the last ones drawn: more than a job's sheets show at once. */
const KEPT = 12;

/** Pixels along the longer side of the smallest level. */
const SMALLEST = 400;

export function createPictures(bitmaps: BitmapMaker): Pictures {
  const known = new Map<string, PictureState>();
  const listeners = new Set<() => void>();
  const stats = { decodes: 0, draws: 0 };

  const settle = (image: string, state: PictureState) => {
    if (!known.has(image)) {
      release(state);
      return;
    }
    known.set(image, state);
    for (const listener of listeners) listener();
  };

  const load = async (image: string): Promise<LoadedPicture> => {
    stats.decodes += 1;
    const { pixels, lines } = await bitmaps.decode(image);
    const levels = [pixels];
    for (let last = pixels; Math.max(last.width, last.height) > SMALLEST; ) {
      last = await bitmaps.halve(last);
      levels.push(last);
    }
    const turned = new Map<number, Bitmap>();
    return {
      levels,
      lines,
      inverted(level) {
        const made = turned.get(level) ?? bitmaps.invert(levels[level] ?? pixels);
        turned.set(level, made);
        return made;
      },
    };
  };

  return {
    get(image) {
      const found = known.get(image);
      if (found) {
        known.delete(image);
        known.set(image, found);
        return found;
      }
      const loading: PictureState = { state: 'loading' };
      known.set(image, loading);
      const [oldest] = known;
      if (known.size > KEPT && oldest) {
        known.delete(oldest[0]);
        release(oldest[1]);
      }
      load(image).then(
        (picture) => settle(image, { state: 'ready', picture }),
        () => settle(image, { state: 'failed' }),
      );
      return loading;
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    countDraw() {
      stats.draws += 1;
    },
    stats: () => ({ ...stats }),
  };
}

function release(state: PictureState): void {
  if (state.state === 'ready') for (const level of state.picture.levels) level.close();
}

/** The level that has at least as many pixels as are wanted, and few more; `ratio` is wanted pixels a pixel of the picture. */
export function levelFor(levels: number, ratio: number): number {
  const halvings = Math.floor(Math.log2(1 / ratio) + 1e-6);
  return Math.min(levels - 1, Math.max(0, halvings));
}

export const pictures = createPictures(browserBitmaps);
