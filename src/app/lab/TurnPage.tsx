import { Button } from 'react-aria-components';
import { kindsFor, type Trial, tryBend } from '../../advice/lab/trial.ts';
import type { UnitSystem } from '../../graph/document.ts';
import type { RouteBend } from '../../graph/route.ts';
import { findBend } from '../../hydraulics/catalogue.ts';
import type { Section } from '../../hydraulics/types.ts';
import { formatFlow, formatLength, formatNumber, formatPressure } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { Marked } from '../Marked.tsx';
import { RowChooser } from '../panel/choosers.tsx';
import { Source } from '../panel/Source.tsx';
import { Term, type TermId } from '../term/Term.tsx';
import { gained } from '../wording.ts';
import { GuessFirst, LabSlider } from './Guess.tsx';
import { useLab } from './lab-context.ts';
import { RadiusCurve } from './RadiusCurve.tsx';
import { RadiusStage, radii } from './RadiusStage.tsx';
import { equivalentText, guessScale, soundChange, soundText } from './text.ts';

const says = words.lab.turn;

/** One turn: its radius and kind are changed, and everything that hangs on them changes with them. */
export function TurnPage({ onApply }: { onApply: (() => void) | null }) {
  const { scene, units, speed, before, choice, choose, guessing } = useLab();
  const trial = tryBend(scene, choice, speed);
  const { bend } = trial;
  const drawnSection = bend && trial.solution.route.segments.get(bend.upstream)?.section;
  if (!bend || !drawnSection) return <p className="hint">{says.gone}</p>;
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
            <Marked text={says.radius(formatLength(bend.radius, units), formatLength(bend.tangent, units))} />
          ) : (
            says.mitre
          )}
          {!trial.fits && <span className="field-error"> {says.noRoom}</span>}
        </p>
      </div>
      <div className="lab-side">
        <div className="lab-controls">
          <RowChooser
            label={says.kind}
            rows={kindsFor(drawnSection, bend.angle)}
            value={choice.kind}
            onChoose={(kind) => choose({ kind, radiusRatio: usableRatio(kind, choice.radiusRatio) })}
          />
          <LabSlider
            label={says.ratio}
            value={rounded ? choice.radiusRatio : 0}
            min={rounded ? radii.least : 0}
            max={radii.most}
            step={radii.step}
            isDisabled={!rounded}
            text={(value) => (rounded ? formatNumber(value, 2) : says.none)}
            onChange={(radiusRatio) => choose({ ...choice, radiusRatio })}
          />
        </div>
        <GuessFirst
          active={guessing && was !== null}
          situation={`${choice.kind} ${choice.radiusRatio} ${speed}`}
          question={says.question}
          truth={flow}
          before={was}
          scale={guessScale('flow', before.solution.speeds[speed]?.ratedFlow ?? 0, units)}
        >
          <TrialFigures trial={trial} />
          {rounded && trial.fitting && <RadiusCurve c={trial.fitting.c} />}
        </GuessFirst>
        {trial.fitting && (
          <div className="lab-source">
            <Source of={trial.fitting.provenance} title={words.panels.fitting.source} />
          </div>
        )}
        {row?.caution && <p className="caution">{row.caution}</p>}
        {onApply && (
          <div className="lab-buttons">
            <Button className="button primary" onPress={onApply}>
              {says.apply}
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
      <LabFigure name={words.lab.lesson.air} id="flow" note={was ? against(change, units) : ''} main>
        {formatFlow(outcome.flow, units)}
      </LabFigure>
      <LabFigure name={words.panels.fitting.coefficient} id="c" term="lossCoefficient">
        {formatNumber(fitting.c, 2)}
      </LabFigure>
      <LabFigure name={words.panels.fitting.equivalentLength} id="equivalent" term="equivalentLength">
        {equivalentText(fitting.equivalentLength, units)}
      </LabFigure>
      <LabFigure name={says.loss} id="loss">
        {formatPressure(fitting.loss, units)}
      </LabFigure>
      <LabFigure
        name={words.lab.lesson.sound}
        id="sound"
        note={says.soundNote(soundChange(was, outcome), String(outcome.sound.uncertainty))}
      >
        {soundText(outcome)}
      </LabFigure>
    </dl>
  );
}

function against(change: number, units: UnitSystem): string {
  const words = gained(change, units);
  return /^.0 /.test(words) ? says.asDrawn : says.against(words);
}

interface LabFigureProps {
  readonly name: string;
  /** What tests and style know it by. */
  readonly id: string;
  readonly note?: string;
  readonly term?: TermId;
  readonly main?: true;
  readonly children: string;
}

export function LabFigure({ name, id, note, term, main, children }: LabFigureProps) {
  return (
    <div className={main ? 'lab-figure main' : 'lab-figure'} data-figure={id}>
      <dt>{term ? <Term of={term}>{name}</Term> : name}</dt>
      <dd>
        <span>{children}</span>
        {note && <small>{note}</small>}
      </dd>
    </div>
  );
}
