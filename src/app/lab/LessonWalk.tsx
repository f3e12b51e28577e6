import { useEffect, useMemo, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import {
  askedFigure,
  type Lesson,
  type LessonState,
  type LessonStep,
  lessonStates,
} from '../../advice/lessons/lesson.ts';
import { drawnBounds } from '../../canvas/route-svg.tsx';
import { outlineOf } from '../../drawing/outline.ts';
import type { UnitSystem } from '../../graph/document.ts';
import { formatFlow, formatPressure, formatVelocity } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { DuctPicture } from './DuctPicture.tsx';
import { GuessForm, Judgement } from './Guess.tsx';
import { changeText, guessScale, shownTruth, soundChange, soundText } from './text.ts';

const says = words.lab.lesson;

interface LessonWalkProps {
  readonly lesson: Lesson;
  /** The step to begin with. */
  readonly from: number;
  readonly units: UnitSystem;
  /** Told of each step that is come to, and of the end as the one after the last. */
  readonly reach: (step: number) => void;
  readonly leave: () => void;
}

/** Longest straight duct that the scale of a guess goes to, m. */
const LONGEST = 30;

/** One lesson from its first step to the points to take home. */
export function LessonWalk({ lesson, from, units, reach, leave }: LessonWalkProps) {
  const states = useMemo(() => lessonStates(lesson, units), [lesson, units]);
  const [at, setAt] = useState(from);
  const [answer, setAnswer] = useState<{ readonly guess: number | null } | null>(null);
  const heading = useRef<HTMLHeadingElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new step begins at its heading
  useEffect(() => heading.current?.focus(), [at]);
  const next = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    if (answer) next.current?.focus();
  }, [answer]);
  const step = lesson.steps[at];
  const go = (to: number) => {
    setAnswer(null);
    setAt(to);
    reach(to);
  };
  if (!step) return <LessonEnd lesson={lesson} heading={heading} again={() => go(0)} leave={leave} />;
  const before = states[at] as LessonState;
  const after = states[at + 1] as LessonState;
  const shown = answer ? after : before;
  return (
    <div className="lab-turn lesson">
      <div className="lab-stage">
        <LessonPicture lesson={lesson} states={states} shown={shown} step={step} />
        <p className="stage-note">{says.picture(lesson.job(units).title)}</p>
      </div>
      <div className="lab-side" data-answered={answer !== null || undefined}>
        <p className="lesson-count">{says.step(lesson.title, at + 1, lesson.steps.length)}</p>
        <h3 ref={heading} tabIndex={-1}>
          {step.title}
        </h3>
        <p className="lesson-told">{step.text}</p>
        {answer ? (
          <Answer step={step} guess={answer.guess} before={before} after={after} units={units} />
        ) : (
          <>
            <p className="todo">{step.todo}</p>
            <GuessForm
              key={at}
              question={step.ask.question}
              scale={scaleOf(step, before, units)}
              start={step.change && step.ask.of !== 'equivalentLength' ? askedFigure(step.ask, before) : null}
              act={step.change ? says.makeChange : says.show}
              onGuess={(guess) => setAnswer({ guess })}
            />
          </>
        )}
        <div className="lab-buttons">
          {answer && (
            <Button ref={next} className="button primary" onPress={() => go(at + 1)}>
              {at + 1 < lesson.steps.length ? says.next : says.toEnd}
            </Button>
          )}
          {at > 0 && (
            <Button className="button" onPress={() => go(at - 1)}>
              {says.back}
            </Button>
          )}
          <Button className="text-button" onPress={leave}>
            {says.all}
          </Button>
        </div>
      </div>
    </div>
  );
}

function scaleOf({ ask }: LessonStep, { solution }: LessonState, units: UnitSystem) {
  const rated = solution.speeds.at(-1)?.ratedFlow ?? 0;
  const most = ask.of === 'flow' ? rated : ask.of === 'velocity' ? 20 : LONGEST;
  return guessScale(ask.of, most, units);
}

interface AnswerProps {
  readonly step: LessonStep;
  readonly guess: number | null;
  readonly before: LessonState;
  readonly after: LessonState;
  readonly units: UnitSystem;
}

/** What the change did, in solved figures, and what to remember of it. */
function Answer({ step, guess, before, after, units }: AnswerProps) {
  const scale = scaleOf(step, after, units);
  const [was, is] = [before.outcome, after.outcome];
  const truth = askedFigure(step.ask, after);
  const was0 = step.change && step.ask.of !== 'equivalentLength' ? askedFigure(step.ask, before) : null;
  const rows = [
    {
      name: says.air,
      a: formatFlow(was.flow, units),
      b: formatFlow(is.flow, units),
      change: changeText('flow', was.flow, is.flow, units),
    },
    {
      name: says.pressure,
      a: formatPressure(was.totalPressure, units),
      b: formatPressure(is.totalPressure, units),
      change: changeText('pressure', was.totalPressure, is.totalPressure, units),
    },
    {
      name: says.fastest,
      a: formatVelocity(was.fastest?.velocity ?? 0, units),
      b: formatVelocity(is.fastest?.velocity ?? 0, units),
      change: changeText('velocity', was.fastest?.velocity ?? 0, is.fastest?.velocity ?? 0, units),
    },
    { name: says.sound, a: soundText(was), b: soundText(is), change: soundChange(was, is) },
  ];
  return (
    <>
      <p className="lesson-truth" role="status">
        <span>{step.ask.question}</span>
        <strong>{shownTruth(scale, truth)}</strong>
        {was0 !== null && <small>{says.wasBefore(shownTruth(scale, was0))}</small>}
      </p>
      {guess !== null && <Judgement guess={guess} truth={truth} before={was0} scale={scale} />}
      <table className="lesson-table">
        <caption>{says.caption(String(is.sound.uncertainty))}</caption>
        <thead>
          <tr>
            <td />
            {step.change && <th scope="col">{says.before}</th>}
            <th scope="col">{step.change ? says.now : says.asDrawn}</th>
            {step.change && <th scope="col">{says.change}</th>}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ name, a, b, change }) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              {step.change && <td>{a}</td>}
              <td>{b}</td>
              {step.change && <td>{change}</td>}
            </tr>
          ))}
        </tbody>
      </table>
      <p className="remember">
        <strong>{says.remember}</strong> {step.remember}
      </p>
    </>
  );
}

interface LessonPictureProps {
  readonly lesson: Lesson;
  readonly states: readonly LessonState[];
  readonly shown: LessonState;
  readonly step: LessonStep;
}

/** The run of the lesson, at one scale for all of its steps. */
function LessonPicture({ lesson, states, shown, step }: LessonPictureProps) {
  const bounds = useMemo(
    () =>
      drawnBounds(
        (states[0] as LessonState).job,
        states.map(({ solution }) => solution.route),
        'section-x',
      ),
    [states],
  );
  if (!bounds) return null;
  return (
    <DuctPicture
      className="stage"
      drawables={outlineOf(shown.solution.route, shown.job, 'section-x').drawables}
      bounds={bounds}
      label={says.run(lesson.title, step.title)}
      lit={({ of, id }) => (of === 'node' ? step.nodes : step.segments).includes(id)}
    />
  );
}

interface LessonEndProps {
  readonly lesson: Lesson;
  readonly heading: React.RefObject<HTMLHeadingElement | null>;
  readonly again: () => void;
  readonly leave: () => void;
}

function LessonEnd({ lesson, heading, again, leave }: LessonEndProps) {
  return (
    <section className="lesson-end">
      <h3 ref={heading} tabIndex={-1}>
        {says.end(lesson.title)}
      </h3>
      <ul>
        {lesson.steps.map(({ title, remember }) => (
          <li key={title}>{remember}</li>
        ))}
      </ul>
      <h4>{says.range}</h4>
      <p className="range">{lesson.range}</p>
      <div className="lab-buttons">
        <Button className="button primary" onPress={leave}>
          {says.all}
        </Button>
        <Button className="button" onPress={again}>
          {says.again}
        </Button>
      </div>
    </section>
  );
}
