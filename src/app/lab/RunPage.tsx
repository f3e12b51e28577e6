import { useDeferredValue, useMemo, useState } from 'react';
import { RUN_LENGTH } from '../../advice/lab/bench.ts';
import { MOST_BENDS, tryRuns } from '../../advice/lab/trial.ts';
import { drawnBounds } from '../../canvas/route-svg.tsx';
import { outlineOf } from '../../drawing/outline.ts';
import { findBend } from '../../hydraulics/catalogue.ts';
import { formatFlow, formatNumber, formatRun } from '../../units/index.ts';
import { counted, gained } from '../wording.ts';
import { DuctPicture } from './DuctPicture.tsx';
import { GuessFirst, LabSlider } from './Guess.tsx';
import { Bar } from './KindsPage.tsx';
import { useLab } from './lab-context.ts';
import { guessScale } from './text.ts';

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
            label={`A run of ${formatRun(RUN_LENGTH, units)} with ${counted(count, 'bend')}`}
            lit={(item) => item.kind === 'bend' || item.kind === 'joint'}
          />
        )}
        {!shown.fits && <p className="field-error">The legs of this run have no room for so large an arc.</p>}
      </div>
      <div className="lab-side">
        <p className="lab-lead">
          {formatRun(RUN_LENGTH, units)} of duct on an invented bench, with square bends on it:{' '}
          {(row?.name ?? kind).toLowerCase()}
          {radiusRatio > 0 ? `, r/D ${formatNumber(radiusRatio, 2)}` : ''}, as chosen on the page One turn.
        </p>
        <LabSlider
          label="Bends on the run"
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
          question={`Straight, ${formatFlow(straight, units)} get out. How much with ${counted(count, 'bend')}?`}
          truth={shown.outcome.flow}
          before={straight}
          scale={guessScale('flow', shown.solution.speeds[benchSpeed]?.ratedFlow ?? straight, units)}
        >
          <dl className="run-bars">
            {runs.map(({ count: n, trial }, i) => {
              const flow = trial.outcome?.flow ?? 0;
              const last = runs[i - 1]?.trial.outcome?.flow;
              const taken = last === undefined ? '' : ` (${gained(flow - last, units)})`;
              return (
                <Bar
                  key={n}
                  name={n === 0 ? 'Straight' : counted(n, 'bend')}
                  share={straight > 0 ? flow / straight : 0}
                  text={`${formatFlow(flow, units)}${taken}`}
                  good
                  chosen={n === count}
                />
              );
            })}
          </dl>
        </GuessFirst>
        <p className="range">
          Each bend is counted as if it stood alone. Bends closer than a few diameters disturb one another,
          and may cost more or less than this sum.
        </p>
      </div>
    </div>
  );
}

/** The bench's hood at its highest speed. */
const benchSpeed = 3;
