import type { Lesson } from './lesson.ts';
import { smallCap } from './small-cap.ts';
import { squeezedDuct } from './squeezed-duct.ts';
import { tightTurns } from './tight-turns.ts';

/** The ready lessons, in the order in which they are best taught. */
export const lessons: readonly Lesson[] = [tightTurns, squeezedDuct, smallCap];
