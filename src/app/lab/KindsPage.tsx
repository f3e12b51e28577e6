import { useMemo } from 'react';
import { Button } from 'react-aria-components';
import { tryEveryKind } from '../../advice/lab/trial.ts';
import { bendSketch } from '../../drawing/bend-sketch.ts';
import { hydraulicDiameter } from '../../hydraulics/section.ts';
import { formatFlow, formatNumber, formatTrimmed } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { DuctPicture } from './DuctPicture.tsx';
import { GuessFirst } from './Guess.tsx';
import { useLab } from './lab-context.ts';
import { lying } from './TurnPage.tsx';
import { equivalentText, guessScale } from './text.ts';

const says = words.lab.kinds;

/** Every kind of bend that suits the turn, all at one scale, with bars for what each costs. */
export function KindsPage({ onTake }: { onTake: () => void }) {
  const { scene, speed, units, choose, guessing } = useLab();
  const rows = useMemo(() => tryEveryKind(scene, speed), [scene, speed]);
  const solved = rows.flatMap(({ row, trial: { bend, fitting, outcome, solution } }) => {
    const section = bend && solution.route.segments.get(bend.upstream)?.section;
    return bend && fitting && outcome && section
      ? [{ row, bend, fitting, outcome, section: lying(section, bend) }]
      : [];
  });
  const [gentlest] = solved;
  const dearest = solved.at(-1);
  if (!gentlest || !dearest) return <p className="caution">{rows[0]?.trial.reason}</p>;
  const most = {
    c: Math.max(...solved.map(({ fitting }) => fitting.c)),
    length: Math.max(...solved.map(({ fitting }) => fitting.equivalentLength)),
    flow: Math.max(...solved.map(({ outcome }) => outcome.flow)),
  };
  const side =
    Math.max(...solved.map(({ bend }) => bend.tangent)) + 0.35 * hydraulicDiameter(gentlest.section);
  const thick = 0.65 * hydraulicDiameter(gentlest.section);
  return (
    <GuessFirst
      active={guessing}
      situation={`kinds ${speed}`}
      question={says.question(gentlest.row.name, formatFlow(gentlest.outcome.flow, units))}
      truth={dearest.outcome.flow}
      before={gentlest.outcome.flow}
      scale={guessScale('flow', gentlest.outcome.flow, units)}
    >
      <p className="lab-lead">{says.lead}</p>
      <ul className="kinds">
        {solved.map(({ row, bend, fitting, outcome, section }) => {
          const turn = (bend.angle * Math.PI) / 180;
          const up = side * Math.sin(turn);
          return (
            <li key={row.id} className="kind" data-kind={row.id}>
              <DuctPicture
                drawables={
                  bendSketch({
                    kind: bend.kind,
                    radiusRatio: bend.radiusRatio,
                    angle: bend.angle,
                    section,
                    leg: side,
                  }).drawables
                }
                bounds={{ minU: -side, minV: -thick, maxU: thick, maxV: Math.max(up, thick) }}
                label={says.picture(row.name)}
                lit={(item) => item.of === 'node'}
              />
              <div className="kind-words">
                <h3>
                  {row.name}
                  <small>
                    {row.defaultRadiusRatio > 0
                      ? says.radius(formatTrimmed(row.defaultRadiusRatio))
                      : says.noRadius}
                  </small>
                </h3>
                <dl>
                  <Bar name={says.c} share={fitting.c / most.c} text={formatNumber(fitting.c, 2)} />
                  <Bar
                    name={says.equivalent}
                    share={fitting.equivalentLength / most.length}
                    text={equivalentText(fitting.equivalentLength, units)}
                  />
                  <Bar
                    name={says.air}
                    share={outcome.flow / most.flow}
                    text={formatFlow(outcome.flow, units)}
                    good
                  />
                </dl>
                {row.caution && <p className="caution">{row.caution}</p>}
                <Button
                  className="text-button"
                  onPress={() => {
                    choose({ kind: row.id, radiusRatio: row.defaultRadiusRatio });
                    onTake();
                  }}
                >
                  {says.lookAt}
                  <span className="unseen">: {row.name.toLowerCase()}</span>
                </Button>
              </div>
            </li>
          );
        })}
      </ul>
    </GuessFirst>
  );
}

interface BarProps {
  readonly name: string;
  readonly share: number;
  readonly text: string;
  readonly good?: true;
  readonly chosen?: boolean;
}

/** A figure with a bar as long as its part of the largest. */
export function Bar({ name, share, text, good, chosen }: BarProps) {
  return (
    <div className={['lab-bar', good && 'good', chosen && 'chosen'].filter(Boolean).join(' ')}>
      <dt>{name}</dt>
      <dd>
        <svg viewBox="0 0 100 8" preserveAspectRatio="none" aria-hidden="true">
          <rect className="bar-rest" width="100" height="8" />
          <rect className="bar-part" width={100 * Math.max(0, share)} height="8" />
        </svg>
        <span>{text}</span>
      </dd>
    </div>
  );
}
