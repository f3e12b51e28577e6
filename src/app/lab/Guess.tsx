import { type ReactNode, useState } from 'react';
import { Button, Label, Slider, SliderOutput, SliderThumb, SliderTrack } from 'react-aria-components';
import { judgeGuess } from '../../advice/lab/guess.ts';
import { formatTrimmed } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { Marked } from '../Marked.tsx';
import { type GuessScale, shownTruth } from './text.ts';

const says = words.lab.guess;

interface GuessFormProps {
  readonly question: string;
  readonly scale: GuessScale;
  /** Where the slider starts, SI; in the middle for null. */
  readonly start: number | null;
  readonly act: string;
  /** The guess, SI; null where it was passed over. */
  readonly onGuess: (guess: number | null) => void;
}

/** Asks for a prediction. What is guessed is told to nobody and kept nowhere. */
export function GuessForm({ question, scale, start, act, onGuess }: GuessFormProps) {
  const near =
    Math.round((start === null ? (scale.min + scale.max) / 2 : scale.shown(start)) / scale.step) * scale.step;
  const [value, setValue] = useState(Math.min(scale.max, Math.max(scale.min, near)));
  return (
    <form
      className="guess"
      onSubmit={(event) => {
        event.preventDefault();
        onGuess(scale.si(value));
      }}
    >
      <LabSlider
        label={`${question} (${scale.unit})`}
        value={value}
        min={scale.min}
        max={scale.max}
        step={scale.step}
        text={(shown) => `${formatTrimmed(shown, 1)} ${scale.unit}`}
        onChange={setValue}
      />
      <div className="lab-buttons">
        <Button type="submit" className="button primary">
          {act}
        </Button>
        <Button className="text-button" onPress={() => onGuess(null)}>
          {says.skip}
        </Button>
      </div>
    </form>
  );
}

/** What is said to a guess. */
export function Judgement(props: {
  readonly guess: number;
  readonly truth: number;
  readonly before: number | null;
  readonly scale: GuessScale;
}) {
  const { guess, truth, before, scale } = props;
  const said = `${formatTrimmed(scale.shown(guess), 1)} ${scale.unit}`;
  return (
    <p className="judged" role="status">
      <Marked text={says.judged(said, shownTruth(scale, truth), judgeGuess(guess, truth, before).words)} />
    </p>
  );
}

interface GuessFirstProps {
  readonly active: boolean;
  /** A new situation asks anew. */
  readonly situation: string;
  readonly question: string;
  readonly truth: number;
  readonly before: number | null;
  readonly scale: GuessScale;
  readonly children: ReactNode;
}

/** Shows what is inside only after a prediction, where the trainer wants it so. */
export function GuessFirst({ active, situation, children, ...asked }: GuessFirstProps) {
  const [answer, setAnswer] = useState<{ situation: string; guess: number | null } | null>(null);
  if (!active) return children;
  if (answer?.situation !== situation)
    return (
      <GuessForm
        key={situation}
        question={asked.question}
        scale={asked.scale}
        start={asked.before}
        act={says.reveal}
        onGuess={(guess) => setAnswer({ situation, guess })}
      />
    );
  return (
    <>
      {answer.guess !== null && <Judgement {...asked} guess={answer.guess} />}
      {children}
    </>
  );
}

interface LabSliderProps {
  readonly label: string;
  readonly value: number;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly text: (value: number) => string;
  readonly onChange: (value: number) => void;
  readonly isDisabled?: boolean;
}

/** A value on a track, with what it says in words. */
export function LabSlider({
  label,
  value,
  min,
  max,
  step,
  text,
  onChange,
  isDisabled = false,
}: LabSliderProps) {
  return (
    <Slider
      className="lab-slider"
      value={value}
      minValue={min}
      maxValue={max}
      step={step}
      isDisabled={isDisabled}
      onChange={onChange}
    >
      <Label>{label}</Label>
      <SliderOutput>{text(value)}</SliderOutput>
      <SliderTrack className="lab-track">
        {({ state }) => (
          <>
            <span className="lab-track-fill" style={{ width: `${100 * state.getThumbPercent(0)}%` }} />
            <SliderThumb className="lab-thumb" />
          </>
        )}
      </SliderTrack>
    </Slider>
  );
}
