import { lessons } from '../../advice/lessons/lessons.ts';

/** Where a lesson was left: the step to go on with, and whether its end was ever reached. */
export interface LessonPlace {
  readonly at: number;
  readonly taken: boolean;
}

export type LessonPlaces = Readonly<Record<string, LessonPlace>>;

const key = 'gentlebend.lessons';

/** What this browser remembers of the lessons; the guesses are not among it. */
export function readPlaces(): LessonPlaces {
  try {
    return placesFrom(JSON.parse(localStorage.getItem(key) ?? 'null'));
  } catch {
    return {};
  }
}

export function keepPlaces(places: LessonPlaces): void {
  try {
    localStorage.setItem(key, JSON.stringify(places));
  } catch {
    // A browser that keeps nothing still teaches.
  }
}

/** Only what fits the lessons there are: a step that a lesson does not have begins it anew. */
export function placesFrom(kept: unknown): LessonPlaces {
  if (typeof kept !== 'object' || kept === null) return {};
  const places: Record<string, LessonPlace> = {};
  for (const { id, steps } of lessons) {
    const { at, taken } = { ...(kept as Record<string, Partial<LessonPlace> | null>)[id] };
    const known = typeof at === 'number' && Number.isInteger(at) && at >= 0 && at < steps.length;
    if (known || taken === true) places[id] = { at: known ? at : 0, taken: taken === true };
  }
  return places;
}
