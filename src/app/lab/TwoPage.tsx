import { useMemo } from 'react';
import { type Trial, tryTwoBends } from '../../advice/lab/trial.ts';
import { outlineIn } from '../../drawing/outline.ts';
import type { View } from '../../drawing/view.ts';
import { type Bounds, boundsOf } from '../../drawing/viewport.ts';
import { cross, dot, normalize } from '../../graph/vector.ts';
import { formatAngle, formatFlow, formatLength, formatNumber, formatPressure } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { gained } from '../wording.ts';
import { DuctPicture } from './DuctPicture.tsx';
import { GuessFirst } from './Guess.tsx';
import { useLab } from './lab-context.ts';
import { LabFigure } from './TurnPage.tsx';
import { equivalentText, guessScale, soundChange, soundText } from './text.ts';

const says = words.lab.two;

/** One bend beside two of half its angle across the same corner. */
export function TwoPage() {
  const { scene, choice, speed, units, guessing } = useLab();
  const { kind, radiusRatio } = choice;
  const shared = useMemo(
    () => tryTwoBends(scene, { kind, radiusRatio }, speed),
    [scene, kind, radiusRatio, speed],
  );
  const [one, two] = [shared?.one.outcome, shared?.two.outcome];
  if (!shared?.one.bend || !shared.one.fitting || !one || !two)
    return <p className="caution">{shared?.one.reason ?? says.gone}</p>;
  const { angle } = shared.one.bend;
  const change = two.flow - one.flow;
  const view = planeOf(shared.one, scene.node);
  const bounds = view && corner(shared.one, scene.node, view, shared.diagonal);
  return (
    <>
      <p className="lab-lead">
        {says.lead(formatAngle(angle), formatAngle(angle / 2), formatLength(shared.diagonal, units))}
      </p>
      <div className="pair">
        <Side
          title={says.one(formatAngle(angle))}
          trial={shared.one}
          view={view}
          bounds={bounds}
          c={shared.one.fitting.c}
          length={shared.one.fitting.equivalentLength}
          loss={shared.one.fitting.loss}
        />
        <GuessFirst
          active={guessing}
          situation={`two ${kind} ${radiusRatio} ${speed}`}
          question={says.question(formatFlow(one.flow, units))}
          truth={two.flow}
          before={one.flow}
          scale={guessScale('flow', shared.one.solution.speeds[speed]?.ratedFlow ?? one.flow, units)}
        >
          <Side
            title={says.two(formatAngle(angle / 2))}
            trial={shared.two}
            view={view}
            bounds={bounds}
            c={shared.both.c}
            length={shared.both.equivalentLength}
            loss={shared.both.loss}
            before={shared.one}
          />
          <p className="lab-verdict">
            {Math.abs(change) < 0.002 * one.flow
              ? says.noDifference
              : change > 0
                ? says.gains(gained(change, units))
                : says.costs(gained(change, units).slice(1))}
          </p>
        </GuessFirst>
      </div>
      <p className="range">{says.alone}</p>
    </>
  );
}

interface SideProps {
  readonly title: string;
  readonly trial: Trial;
  readonly view: View | null;
  readonly bounds: Bounds | null;
  readonly c: number;
  readonly length: number;
  readonly loss: number;
  readonly before?: Trial;
}

function Side({ title, trial, view, bounds, c, length, loss, before }: SideProps) {
  const { units } = useLab();
  const { outcome, solution, job } = trial;
  return (
    <section className="pair-side" aria-label={title}>
      <h3>{title}</h3>
      {view && bounds && (
        <DuctPicture
          drawables={outlineIn(solution.route, job, view).drawables}
          bounds={bounds}
          label={words.lab.kinds.picture(title)}
          lit={(item) => item.of === 'node' && (item.kind === 'bend' || item.kind === 'joint')}
        />
      )}
      <dl className="lab-figures">
        <LabFigure
          name={words.lab.lesson.air}
          id="flow"
          main
          note={before?.outcome && outcome ? gained(outcome.flow - before.outcome.flow, units) : ''}
        >
          {outcome ? formatFlow(outcome.flow, units) : '–'}
        </LabFigure>
        <LabFigure name={words.panels.fitting.coefficient} id="c">
          {formatNumber(c, 2)}
        </LabFigure>
        <LabFigure name={words.panels.fitting.equivalentLength} id="equivalent">
          {equivalentText(length, units)}
        </LabFigure>
        <LabFigure name={says.loss} id="loss">
          {formatPressure(loss, units)}
        </LabFigure>
        <LabFigure name={says.sound} id="sound" note={before ? soundChange(before.outcome, outcome) : ''}>
          {soundText(outcome)}
        </LabFigure>
      </dl>
    </section>
  );
}

/** Looking square at the plane of the turn. */
function planeOf({ solution: { route } }: Trial, id: string): View | null {
  const bend = route.nodes.get(id)?.bend;
  const incoming = bend && route.segments.get(bend.upstream)?.direction;
  const outgoing = bend && route.segments.get(bend.downstream)?.direction;
  if (!incoming || !outgoing) return null;
  const toward = normalize(cross(incoming, outgoing));
  return { right: incoming, up: cross(toward, incoming), toward };
}

/** The corner and as much of its legs as tells it, m. */
function corner({ solution: { route } }: Trial, id: string, view: View, diagonal: number): Bounds | null {
  const at = route.nodes.get(id)?.at;
  if (!at) return null;
  const [u, v] = [dot(at, view.right), dot(at, view.up)];
  const reach = 1.35 * diagonal;
  return boundsOf([
    { u: u - reach, v: v - 0.3 * reach },
    { u: u + 0.3 * reach, v: v + reach },
  ]);
}
