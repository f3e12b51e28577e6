import { words } from '../../words/index.ts';

const says = words.lessons.guess;

/** How near a guess came. Nothing of it is kept. */
export interface Judged {
  /** How far off, of the true value: 0.1 for ten percent. */
  readonly off: number;
  /** Whether the guess went the way that the figure went; null where either hardly changed, or there was no before. */
  readonly rightWay: boolean | null;
  readonly words: string;
}

/** Changes smaller than this part of what was before go no way worth guessing. */
const HARDLY = 0.01;

/** A guess that moves less than this part of the true change expected none. */
const SAME = 0.2;

/**
 * Judges a guess kindly: what was right about it comes first.
 *
 * @param before the figure before the change; null where there was none
 */
export function judgeGuess(guess: number, truth: number, before: number | null): Judged {
  const off = Math.abs(guess - truth) / Math.max(Math.abs(truth), Number.MIN_VALUE);
  const changed = before !== null && Math.abs(truth - before) > HARDLY * Math.abs(before);
  const rightWay = changed ? Math.sign(guess - before) === Math.sign(truth - before) : null;
  if (changed && Math.abs(guess - before) < SAME * Math.abs(truth - before))
    return { off, rightWay: null, words: says.hardlyAny };
  return { off, rightWay, words: wordsOf(off, rightWay) };
}

function wordsOf(off: number, rightWay: boolean | null): string {
  const near = off < 1.005 ? says.off(Math.round(100 * off)) : says.farOff;
  if (off <= 0.03) return says.spotOn;
  if (off <= 0.1) return says.veryClose(near);
  if (rightWay === false) return says.otherWay(near);
  if (off <= 0.25) return (rightWay ? says.closeRightWay : says.close)(near);
  if (rightWay) return says.rightWay(near);
  return says.remember(near);
}
