import { writeFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import { Interrupted, type Work } from './command.ts';
import type { Surroundings } from './reading.ts';

/** A step gives way to the outside no more often than this, ms: giving way costs time. */
const pause = 50;

/** What was to be written and could not be. */
export class NotWritten extends Error {
  constructor(
    readonly file: string,
    cause: unknown,
  ) {
    super(file, { cause });
  }
}

/** Work in hand, with a line about it on a terminal. */
export interface Desk extends Work {
  /** What stands before every step: which file of how many. */
  at(place: string): void;
  /** Takes the line away, so that something can be written in its place. */
  clear(): void;
}

/**
 * @param quiet says nothing on the way even on a terminal
 * @param signal calls the work off at its next step
 */
export function deskOf({ stderr, env }: Surroundings, quiet: boolean, signal: AbortSignal | undefined): Desk {
  const telling = stderr.isTTY === true && !quiet;
  let place = '';
  let shown = '';
  let gave = Date.now();
  const show = (line: string) => {
    if (!telling || line === shown) return;
    stderr.write(`\r\x1b[2K${line}`);
    shown = line;
  };
  return {
    at(next) {
      place = next;
      show(place);
    },
    clear: () => show(''),
    async step(doing) {
      show(place === '' ? doing : `${place}: ${doing}`);
      if (Date.now() - gave > pause) {
        await setImmediate();
        gave = Date.now();
      }
      if (signal?.aborted) throw new Interrupted();
    },
    async write(name, data) {
      const path = resolve(env.INIT_CWD ?? '.', name);
      try {
        await writeFile(path, data);
      } catch (error) {
        throw new NotWritten(name, error);
      }
      return path;
    },
  };
}
