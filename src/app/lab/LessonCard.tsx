import { useMemo } from 'react';
import { Button } from 'react-aria-components';
import { type Lesson, lessonStates } from '../../advice/lessons/lesson.ts';
import { drawnBounds } from '../../canvas/route-svg.tsx';
import { outlineOf } from '../../drawing/outline.ts';
import type { Bounds } from '../../drawing/viewport.ts';
import type { UnitSystem } from '../../graph/document.ts';
import { formatFlow } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { DuctPicture } from './DuctPicture.tsx';
import type { LessonPlace } from './lesson-places.ts';

const says = words.lab.lessons;

interface LessonCardProps {
  readonly lesson: Lesson;
  readonly units: UnitSystem;
  readonly place: LessonPlace | undefined;
  readonly begin: (step: number) => void;
}

/** What a lesson is about, what it asks, how long it takes and where it was left. */
export function LessonCard({ lesson, units, place, begin }: LessonCardProps) {
  const { steps, title, about } = lesson;
  const left = place?.at ?? 0;
  return (
    <li className="lesson-card">
      <LessonSketch lesson={lesson} units={units} />
      <h3>{title}</h3>
      <p>{about}</p>
      <p className="lesson-note">
        {says.length(words.counts.steps(steps.length), minutesEach * steps.length)}
        {place?.taken && <strong> {says.taken}</strong>}
      </p>
      <div className="lab-buttons">
        <Button className="button primary" onPress={() => begin(left)}>
          {left > 0 ? says.goOn(left + 1, title) : says.begin(title)}
        </Button>
        {left > 0 && (
          <Button className="text-button" onPress={() => begin(0)}>
            {words.lab.lesson.again}
            <span className="unseen">: {title}</span>
          </Button>
        )}
      </div>
      <div className="lesson-plan">
        <h4>{says.foretold}</h4>
        <ol>
          {steps.map((step, i) => (
            <li key={step.title} aria-current={left > 0 && i === left ? 'step' : undefined}>
              <span>{step.title}</span> {step.ask.question}
            </li>
          ))}
        </ol>
        <h4>{says.comesOut}</h4>
        {place?.taken ? <Results lesson={lesson} units={units} /> : <p>{says.withheld}</p>}
      </div>
    </li>
  );
}

/** What a step takes with a guess and some talk about it, min: common practice in teaching, not measured. */
const minutesEach = 2;

/** The air as the lesson begins, at its worst and at its end. Told only when no guess is spoilt by it. */
function Results({ lesson, units }: { readonly lesson: Lesson; readonly units: UnitSystem }) {
  const flows = useMemo(
    () => lessonStates(lesson, units).map(({ outcome }) => outcome.flow),
    [lesson, units],
  );
  const [first = 0] = flows;
  const last = flows.at(-1) ?? 0;
  return (
    <dl className="lesson-results">
      {(
        [
          [says.first, first],
          [says.worst, Math.min(...flows)],
          [says.last, last],
        ] as const
      ).map(([name, flow]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{formatFlow(flow, units)}</dd>
        </div>
      ))}
    </dl>
  );
}

/** What every lesson's run fits into, m, so that all are drawn at one scale. */
const frame = { width: 5.7, height: 3.2 };

/** The run with the change that the lesson is about, lit. */
function LessonSketch({ lesson, units }: { readonly lesson: Lesson; readonly units: UnitSystem }) {
  const told = lesson.steps.findIndex(({ change }) => change !== undefined);
  const shown = useMemo(() => lessonStates(lesson, units)[told + 1], [lesson, units, told]);
  const drawn = shown && drawnBounds(shown.job, [shown.solution.route], 'section-x');
  const step = lesson.steps[told];
  if (!shown || !drawn || !step) return null;
  return (
    <DuctPicture
      className="lesson-sketch"
      drawables={outlineOf(shown.solution.route, shown.job, 'section-x').drawables}
      bounds={framed(drawn)}
      label={words.lab.lesson.run(lesson.title, step.title)}
      lit={({ of, id }) => (of === 'node' ? step.nodes : step.segments).includes(id)}
    />
  );
}

/** The drawing at the bottom of the frame, in its middle; a run larger than that is shown whole all the same. */
function framed({ minU, maxU, minV, maxV }: Bounds): Bounds {
  const side = Math.max(0, (frame.width - (maxU - minU)) / 2);
  return { minU: minU - side, maxU: maxU + side, minV, maxV: Math.max(maxV, minV + frame.height) };
}
