import { useState } from 'react';
import type { Lesson } from '../../advice/lessons/lesson.ts';
import { lessons } from '../../advice/lessons/lessons.ts';
import type { UnitSystem } from '../../graph/document.ts';
import { words } from '../../words/index.ts';
import { LessonCard } from './LessonCard.tsx';
import { LessonWalk } from './LessonWalk.tsx';
import { keepPlaces, type LessonPlaces, readPlaces } from './lesson-places.ts';

const says = words.lab.lessons;

/** The ready lessons, or the one that is being walked through. */
export function LessonsPage({ units }: { units: UnitSystem }) {
  const [walk, setWalk] = useState<{ readonly lesson: Lesson; readonly from: number } | null>(null);
  const [places, setPlaces] = useState<LessonPlaces>(readPlaces);
  const reach = ({ id, steps }: Lesson, at: number) => {
    const ended = at >= steps.length;
    const next = {
      ...places,
      [id]: { at: ended ? 0 : at, taken: ended || places[id]?.taken === true },
    };
    setPlaces(next);
    keepPlaces(next);
  };
  if (walk)
    return (
      <LessonWalk
        key={walk.lesson.id}
        lesson={walk.lesson}
        from={walk.from}
        units={units}
        reach={(at) => reach(walk.lesson, at)}
        leave={() => setWalk(null)}
      />
    );
  return (
    <>
      <p className="lab-lead">{says.lead}</p>
      <ul className="lesson-list">
        {lessons.map((lesson) => (
          <LessonCard
            key={lesson.id}
            lesson={lesson}
            units={units}
            place={places[lesson.id]}
            begin={(from) => {
              reach(lesson, from);
              setWalk({ lesson, from });
            }}
          />
        ))}
      </ul>
    </>
  );
}
