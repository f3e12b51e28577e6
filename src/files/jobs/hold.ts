import type { Channel } from './channel.ts';
import type { Holding, Locks } from './locks.ts';

/**
 * Whose a job is: this tab's, another's, or not yet known. `yielding` is the moment in which this tab, asked by
 * another, still writes what it has; `asking` the one in which it waits for that of another.
 */
export type HoldState = 'none' | 'taking' | 'mine' | 'elsewhere' | 'asking' | 'yielding';

/** What led to a state: asked for, given up to another tab, taken by one unasked, left free, or taken over. */
export type HoldReason = 'asked' | 'yielded' | 'seized' | 'freed' | 'took over';

/** The one lock on the job before this tab: who has it edits, all others look on. */
export interface Hold {
  state(): HoldState;
  /** Lets go of the job before, and tries for this one; false where another tab has it. */
  take(job: string): Promise<boolean>;
  /** Takes the job from the tab that has it, once that has written what it had or has not answered in time. */
  takeOver(): Promise<void>;
  letGo(): void;
}

export interface HoldOptions {
  readonly locks: Locks;
  readonly channel: Channel;
  readonly tab: string;
  /** Writes what is outstanding: called before the job is given up. */
  readonly flush: () => Promise<unknown>;
  readonly onState: (state: HoldState, reason: HoldReason) => void;
  /** Time that the other tab has to write what it had, ms. */
  readonly patience?: number;
}

export function createHold({ locks, channel, tab, flush, onState, patience = 1500 }: HoldOptions): Hold {
  let job: string | null = null;
  let state: HoldState = 'none';
  let holding: Holding | null = null;
  let waiting: AbortController | null = null;
  let yielded = () => {};

  const is = (...states: readonly HoldState[]) => states.includes(state);

  const to = (next: HoldState, reason: HoldReason) => {
    state = next;
    onState(next, reason);
  };

  const letGo = () => {
    waiting?.abort();
    waiting = null;
    holding?.release();
    holding = null;
    job = null;
    state = 'none';
  };

  const have = (name: string, got: Holding, reason: HoldReason) => {
    waiting?.abort();
    waiting = null;
    holding = got;
    void got.lost.then(() => {
      if (holding !== got) return;
      holding = null;
      waitFor(name);
      to('elsewhere', 'seized');
    });
    to('mine', reason);
  };

  /** Looks on until the job is left free, as when the other tab closes or dies. */
  const waitFor = (name: string) => {
    const own = new AbortController();
    waiting = own;
    void locks.wait(name, own.signal).then((got) => {
      if (!got) return;
      if (own.signal.aborted || job !== name) got.release();
      else have(name, got, 'freed');
    });
  };

  const give = async (name: string, asker: string) => {
    const given = holding;
    to('yielding', 'yielded');
    await flush().catch(() => {});
    if (holding !== given) return;
    holding = null;
    channel.post({ kind: 'yielded', job: name, to: asker });
    given?.release();
    to('elsewhere', 'yielded');
    waitFor(name);
  };

  channel.listen((message) => {
    if (message.kind === 'ask' && message.job === job && is('mine')) void give(job, message.tab);
    if (message.kind === 'yielded' && message.to === tab && message.job === job) yielded();
  });

  return {
    state: () => state,
    letGo,

    async take(name) {
      letGo();
      job = name;
      to('taking', 'asked');
      const got = await locks.take(name);
      if (job !== name || !is('taking')) {
        got?.release();
        return false;
      }
      if (got) {
        have(name, got, 'asked');
        return true;
      }
      waitFor(name);
      to('elsewhere', 'asked');
      return false;
    },

    async takeOver() {
      const name = job;
      if (name === null || !is('elsewhere')) return;
      to('asking', 'asked');
      await new Promise<void>((done) => {
        yielded = done;
        channel.post({ kind: 'ask', job: name, tab });
        setTimeout(done, patience);
      });
      // It may have been left free meanwhile, and be this tab's already; or another job is asked for.
      if (job !== name || !is('asking')) return;
      waiting?.abort();
      waiting = null;
      const got = await locks.seize(name);
      if (job !== name) got.release();
      else have(name, got, 'took over');
    },
  };
}
