import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { Lesson } from '../../advice/lessons/lesson.ts';
import { lessons } from '../../advice/lessons/lessons.ts';
import type { UnitSystem } from '../../graph/document.ts';
import { words } from '../../words/index.ts';
import { LessonWalk } from './LessonWalk.tsx';

const says = words.lab.lessons;

/** The ready lessons, or the one that is being walked through. */
export function LessonsPage({ units }: { units: UnitSystem }) {
  const [lesson, setLesson] = useState<Lesson | null>(null);
  if (lesson)
    return <LessonWalk key={lesson.id} lesson={lesson} units={units} leave={() => setLesson(null)} />;
  return (
    <>
      <p className="lab-lead">{says.lead}</p>
      <ul className="lesson-list">
        {lessons.map((each) => (
          <li key={each.id} className="lesson-card">
            <h3>{each.title}</h3>
            <p>{each.about}</p>
            <div className="lab-buttons">
              <Button className="button primary" onPress={() => setLesson(each)}>
                {says.begin(each.title)}
              </Button>
              <span className="lesson-note">{words.counts.steps(each.steps.length)}</span>
            </div>
          </li>
        ))}
      </ul>
    </>
  );
}
