import { useMemo } from 'react';
import { type Trial, tryTwoBends } from '../../advice/lab/trial.ts';
import { outlineIn } from '../../drawing/outline.ts';
import type { View } from '../../drawing/view.ts';
import { type Bounds, boundsOf } from '../../drawing/viewport.ts';
import { cross, dot, normalize } from '../../graph/vector.ts';
import { formatAngle, formatFlow, formatLength, formatNumber, formatPressure } from '../../units/index.ts';
import { gained } from '../wording.ts';
import { DuctPicture } from './DuctPicture.tsx';
import { GuessFirst } from './Guess.tsx';
import { useLab } from './lab-context.ts';
import { LabFigure } from './TurnPage.tsx';
import { equivalentText, guessScale, soundChange, soundText } from './text.ts';

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
    return <p className="caution">{shared?.one.reason ?? 'There is no turn to share here.'}</p>;
  const { angle } = shared.one.bend;
  const change = two.flow - one.flow;
  const view = planeOf(shared.one, scene.node);
  const bounds = view && corner(shared.one, scene.node, view, shared.diagonal);
  return (
    <>
      <p className="lab-lead">
        The corner as one {formatAngle(angle)} bend, and shared between two of {formatAngle(angle / 2)} of the
        same make, {formatLength(shared.diagonal, units)} apart.
      </p>
      <div className="pair">
        <Side
          title={`One ${formatAngle(angle)}`}
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
          question={`One bend lets ${formatFlow(one.flow, units)} out. How much do the two let out?`}
          truth={two.flow}
          before={one.flow}
          scale={guessScale('flow', shared.one.solution.speeds[speed]?.ratedFlow ?? one.flow, units)}
        >
          <Side
            title={`Two of ${formatAngle(angle / 2)}`}
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
              ? 'Here it makes no difference worth the work.'
              : change > 0
                ? `Two bring ${gained(change, units)}: they are worth it where the corner is hard.`
                : `Two take ${gained(change, units).slice(1)} more: half the angle has more than half the loss, so a bend that is gentle already stays one.`}
          </p>
        </GuessFirst>
      </div>
      <p className="range">
        Each bend is counted by its own table, as if straight duct stood on both sides; two bends this close
        may cost somewhat more or less than their sum.
      </p>
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
          label={`${title}, true to scale`}
          lit={(item) => item.of === 'node' && (item.kind === 'bend' || item.kind === 'joint')}
        />
      )}
      <dl className="lab-figures">
        <LabFigure
          name="Air delivered"
          id="flow"
          main
          note={before?.outcome && outcome ? gained(outcome.flow - before.outcome.flow, units) : ''}
        >
          {outcome ? formatFlow(outcome.flow, units) : '–'}
        </LabFigure>
        <LabFigure name="Loss coefficient C" id="c">
          {formatNumber(c, 2)}
        </LabFigure>
        <LabFigure name="Equivalent length" id="equivalent">
          {equivalentText(length, units)}
        </LabFigure>
        <LabFigure name="Pressure lost" id="loss">
          {formatPressure(loss, units)}
        </LabFigure>
        <LabFigure name="Sound" id="sound" note={before ? soundChange(before.outcome, outcome) : ''}>
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
