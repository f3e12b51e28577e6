import { inStyle, type Style } from '../../units/index.ts';

/** Lets the page draw and hear a click. */
export function breath(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, 0));
}

/**
 * Does work that stops here and there, in one style of writing, and waits at every stop; in between all others write
 * in theirs.
 *
 * @param rest told what the work stopped with; where it throws, the work is left
 */
export async function inSteps<Stop, Made>(
  style: Style,
  work: Generator<Stop, Made, undefined>,
  rest: (stop: Stop) => Promise<void>,
): Promise<Made> {
  for (;;) {
    const next = inStyle(style, () => work.next());
    if (next.done) return next.value;
    await rest(next.value);
  }
}
