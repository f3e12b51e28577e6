/** Runs `work` when there is time for it, after a rest of `wait` ms; the returned function calls it off. */
export type Schedule = (work: () => void, wait: number) => () => void;

/** Longest that a piece of work holds the page, ms: half a frame. */
const slice = 8;

/**
 * Goes through a search in pieces, in idle time, and hands its result on. While `busy` says so it rests.
 * The returned function calls it off.
 */
export function inIdlePieces<Result>(
  start: () => Generator<undefined, Result, undefined>,
  done: (result: Result) => void,
  options: { readonly schedule?: Schedule; readonly busy?: () => boolean; readonly rest?: number } = {},
): () => void {
  const { schedule = whenIdle, busy = () => false, rest = 150 } = options;
  let search: Generator<undefined, Result, undefined> | null = null;
  let callOff = schedule(go, rest);
  function go(): void {
    if (busy()) {
      callOff = schedule(go, rest);
      return;
    }
    search ??= start();
    const end = performance.now() + slice;
    do {
      const step = search.next();
      if (step.done) {
        done(step.value);
        return;
      }
    } while (performance.now() < end);
    callOff = schedule(go, 0);
  }
  return () => callOff();
}

/** Idle time after a rest, or half a second later at most. */
export function whenIdle(work: () => void, wait: number): () => void {
  let idle: number | null = null;
  const ask = () => {
    if (typeof window.requestIdleCallback !== 'function') work();
    else idle = window.requestIdleCallback(work, { timeout: 500 });
  };
  const goesOnAtOnce = wait === 0 && typeof window.requestIdleCallback === 'function';
  const resting = goesOnAtOnce ? undefined : window.setTimeout(ask, wait);
  if (goesOnAtOnce) ask();
  return () => {
    window.clearTimeout(resting);
    if (idle !== null) window.cancelIdleCallback(idle);
  };
}
