import { useDeferredValue, useMemo, useState } from 'react';
import { RUN_LENGTH } from '../../advice/lab/bench.ts';
import { MOST_BENDS, tryRuns } from '../../advice/lab/trial.ts';
import { drawnBounds } from '../../canvas/route-svg.tsx';
import { outlineOf } from '../../drawing/outline.ts';
import { findBend } from '../../hydraulics/catalogue.ts';
import { formatFlow, formatNumber, formatRun } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { gained } from '../wording.ts';
import { DuctPicture } from './DuctPicture.tsx';
import { GuessFirst, LabSlider } from './Guess.tsx';
import { Bar } from './KindsPage.tsx';
import { useLab } from './lab-context.ts';
import { LabFigure } from './TurnPage.tsx';
import { guessScale } from './text.ts';

const says = words.lab.run;

/** The same length of duct with one bend more each time. Always on the lab's own bench. */
export function RunPage() {
  const { units, choice, guessing } = useLab();
  const { kind, radiusRatio } = useDeferredValue(choice);
  const [count, setCount] = useState(3);
  const runs = useMemo(() => tryRuns(units, { kind, radiusRatio }, benchSpeed), [units, kind, radiusRatio]);
  const straight = runs[0]?.trial.outcome?.flow ?? 0;
  const shown = runs[count]?.trial;
  const row = findBend(kind);
  if (!shown?.outcome) return <p className="caution">{shown?.reason}</p>;
  const bounds = drawnBounds(shown.job, [shown.solution.route], 'section-x');
  return (
    <div className="lab-turn">
      <div className="lab-stage">
        {bounds && (
          <DuctPicture
            className="stage"
            drawables={outlineOf(shown.solution.route, shown.job, 'section-x').drawables}
            bounds={bounds}
            label={says.picture(formatRun(RUN_LENGTH, units), words.counts.bends(count))}
            lit={(item) => item.kind === 'bend' || item.kind === 'joint'}
          />
        )}
        {!shown.fits && <p className="field-error">{says.noRoom}</p>}
      </div>
      <div className="lab-side">
        <p className="lab-lead">
          {radiusRatio > 0
            ? says.aboutRadius(
                formatRun(RUN_LENGTH, units),
                (row?.name ?? kind).toLowerCase(),
                formatNumber(radiusRatio, 2),
              )
            : says.about(formatRun(RUN_LENGTH, units), (row?.name ?? kind).toLowerCase())}
        </p>
        <LabSlider
          label={says.bends}
          value={count}
          min={0}
          max={MOST_BENDS}
          step={1}
          text={(n) => String(n)}
          onChange={setCount}
        />
        <GuessFirst
          active={guessing}
          situation={`run ${kind} ${radiusRatio} ${count}`}
          question={says.question(formatFlow(straight, units), words.counts.bends(count))}
          truth={shown.outcome.flow}
          before={straight}
          scale={guessScale('flow', shown.solution.speeds[benchSpeed]?.ratedFlow ?? straight, units)}
        >
          <dl className="lab-figures">
            <LabFigure
              name={words.lab.lesson.air}
              id="flow"
              main
              note={count === 0 ? '' : says.against(gained(shown.outcome.flow - straight, units))}
            >
              {formatFlow(shown.outcome.flow, units)}
            </LabFigure>
          </dl>
          <dl className="run-bars">
            {runs.map(({ count: n, trial }, i) => {
              const flow = trial.outcome?.flow ?? 0;
              const last = runs[i - 1]?.trial.outcome?.flow;
              const taken = last === undefined ? '' : ` (${gained(flow - last, units)})`;
              return (
                <Bar
                  key={n}
                  name={n === 0 ? says.straight : words.counts.bends(n)}
                  share={straight > 0 ? flow / straight : 0}
                  text={`${formatFlow(flow, units)}${taken}`}
                  good
                  chosen={n === count}
                />
              );
            })}
          </dl>
        </GuessFirst>
        <p className="range">{says.alone}</p>
      </div>
    </div>
  );
}

/** The bench's hood at its highest speed. */
const benchSpeed = 3;
