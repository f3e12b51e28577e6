export interface FrameCounts {
  /** Moves that came in. */
  readonly received: number;
  /** Moves that were acted on: at most one a frame. */
  readonly delivered: number;
}

export interface Frames<T> {
  /** Keeps the newest move until the next frame. */
  push(move: T): void;
  /** Acts on a waiting move now: before a press, a release or a key. */
  flush(): void;
  /** Forgets a waiting move. */
  drop(): void;
  readonly counts: FrameCounts;
}

/** Lets through at most one move a frame, the newest, so that a gesture solves once a frame. */
export function coalesce<T>(
  deliver: (move: T) => void,
  request: (run: () => void) => number,
  release: (id: number) => void,
): Frames<T> {
  const counts = { received: 0, delivered: 0 };
  let waiting: { readonly move: T; readonly id: number } | null = null;
  const run = () => {
    if (!waiting) return;
    const { move } = waiting;
    waiting = null;
    counts.delivered += 1;
    deliver(move);
  };
  return {
    counts,
    push(move) {
      counts.received += 1;
      waiting = { move, id: waiting?.id ?? request(run) };
    },
    flush() {
      if (waiting) release(waiting.id);
      run();
    },
    drop() {
      if (waiting) release(waiting.id);
      waiting = null;
    },
  };
}
