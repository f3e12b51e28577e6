import { Button } from 'react-aria-components';
import { kindsFor, type Trial, tryBend } from '../../advice/lab/trial.ts';
import type { UnitSystem } from '../../graph/document.ts';
import type { RouteBend } from '../../graph/route.ts';
import { findBend } from '../../hydraulics/catalogue.ts';
import type { Section } from '../../hydraulics/types.ts';
import { formatFlow, formatLength, formatNumber, formatPressure } from '../../units/index.ts';
import { RowChooser } from '../panel/choosers.tsx';
import { Source } from '../panel/Source.tsx';
import { gained } from '../wording.ts';
import { GuessFirst, LabSlider } from './Guess.tsx';
import { useLab } from './lab-context.ts';
import { RadiusStage, radii } from './RadiusStage.tsx';
import { equivalentText, guessScale, soundChange, soundText } from './text.ts';

/** One turn: its radius and kind are changed, and everything that hangs on them changes with them. */
export function TurnPage({ onApply }: { onApply: (() => void) | null }) {
  const { scene, units, speed, before, choice, choose, guessing } = useLab();
  const trial = tryBend(scene, choice, speed);
  const { bend } = trial;
  const drawnSection = bend && trial.solution.route.segments.get(bend.upstream)?.section;
  if (!bend || !drawnSection) return <p className="hint">There is no turn here any more.</p>;
  const section = lying(drawnSection, bend);
  const row = findBend(choice.kind);
  const rounded = row?.defaultRadiusRatio !== 0;
  const flow = trial.outcome?.flow ?? 0;
  const was = before.outcome?.flow ?? null;
  return (
    <div className="lab-turn">
      <div className="lab-stage">
        <RadiusStage
          kind={choice.kind}
          radiusRatio={choice.radiusRatio}
          angle={bend.angle}
          section={section}
          side={section.shape === 'round' ? section.diameter : section.width}
          onRadius={(radiusRatio) => choose({ ...choice, radiusRatio })}
        />
        <p className="stage-note">
          {rounded ? (
            <>
              Centre-line radius <strong>{formatLength(bend.radius, units)}</strong>, taken from each leg{' '}
              <strong>{formatLength(bend.tangent, units)}</strong>. Pull the ring, or move the slider.
            </>
          ) : (
            'A mitre has no radius: its corner is cut square.'
          )}
          {!trial.fits && (
            <span className="field-error"> The legs beside this turn have no room for such an arc.</span>
          )}
        </p>
      </div>
      <div className="lab-side">
        <div className="lab-controls">
          <RowChooser
            label="Kind of bend"
            rows={kindsFor(drawnSection, bend.angle)}
            value={choice.kind}
            onChoose={(kind) => choose({ kind, radiusRatio: usableRatio(kind, choice.radiusRatio) })}
          />
          <LabSlider
            label="Radius over diameter, r/D"
            value={rounded ? choice.radiusRatio : 0}
            min={rounded ? radii.least : 0}
            max={radii.most}
            step={radii.step}
            isDisabled={!rounded}
            text={(value) => (rounded ? formatNumber(value, 2) : 'none')}
            onChange={(radiusRatio) => choose({ ...choice, radiusRatio })}
          />
        </div>
        <GuessFirst
          active={guessing && was !== null}
          situation={`${choice.kind} ${choice.radiusRatio} ${speed}`}
          question="How much air gets out with the turn made like this?"
          truth={flow}
          before={was}
          scale={guessScale('flow', before.solution.speeds[speed]?.ratedFlow ?? 0, units)}
        >
          <TrialFigures trial={trial} />
        </GuessFirst>
        {trial.fitting && (
          <div className="lab-source">
            <Source of={trial.fitting.provenance} title="Where the coefficient comes from" />
          </div>
        )}
        {row?.caution && <p className="caution">{row.caution}</p>}
        {onApply && (
          <div className="lab-buttons">
            <Button className="button primary" onPress={onApply}>
              Apply to my drawing
            </Button>
          </div>
        )}
      </div>
    </div>
  );
}

/** A kind without a radius comes back with its own when it gets one again. */
export function usableRatio(kind: string, ratio: number): number {
  const usual = findBend(kind)?.defaultRadiusRatio ?? 1;
  return usual === 0 || ratio === 0 ? usual : ratio;
}

/** A section as the sketch lays it: its width is the side in the plane of the turn. */
export function lying(section: Section, bend: RouteBend): Section {
  if (section.shape === 'round') return section;
  return {
    ...section,
    width: bend.inPlane ?? section.width,
    height: bend.acrossPlane ?? section.height,
  };
}

/** What the turn and the air do, beside what they did as drawn. */
function TrialFigures({ trial }: { trial: Trial }) {
  const { units, before } = useLab();
  const { fitting, outcome } = trial;
  if (!fitting || !outcome) return <p className="caution">{trial.reason}</p>;
  const was = before.outcome;
  const change = was ? outcome.flow - was.flow : 0;
  return (
    <dl className="lab-figures">
      <LabFigure name="Air delivered" id="flow" note={was ? against(change, units) : ''} main>
        {formatFlow(outcome.flow, units)}
      </LabFigure>
      <LabFigure name="Loss coefficient C" id="c">
        {formatNumber(fitting.c, 2)}
      </LabFigure>
      <LabFigure name="Equivalent length" id="equivalent">
        {equivalentText(fitting.equivalentLength, units)}
      </LabFigure>
      <LabFigure name="Pressure lost in it" id="loss">
        {formatPressure(fitting.loss, units)}
      </LabFigure>
      <LabFigure
        name="Sound at the cook"
        id="sound"
        note={`${soundChange(was, outcome)}; estimate, ±${outcome.sound.uncertainty} dB`}
      >
        {soundText(outcome)}
      </LabFigure>
    </dl>
  );
}

function against(change: number, units: UnitSystem): string {
  const words = gained(change, units);
  return /^.0 /.test(words) ? 'as drawn' : `${words} against as drawn`;
}

interface LabFigureProps {
  readonly name: string;
  /** What tests and style know it by. */
  readonly id: string;
  readonly note?: string;
  readonly main?: true;
  readonly children: string;
}

export function LabFigure({ name, id, note, main, children }: LabFigureProps) {
  return (
    <div className={main ? 'lab-figure main' : 'lab-figure'} data-figure={id}>
      <dt>{name}</dt>
      <dd>
        <span>{children}</span>
        {note && <small>{note}</small>}
      </dd>
    </div>
  );
}
