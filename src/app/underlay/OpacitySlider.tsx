import { Label, Slider, SliderOutput, SliderThumb, SliderTrack } from 'react-aria-components';
import { words } from '../../words/index.ts';

interface OpacitySliderProps {
  /** 0 to 1. */
  readonly value: number;
  readonly onChange: (value: number) => void;
  /** Told once, when the hand lets go. */
  readonly onEnd?: (value: number) => void;
}

/** How much of an underlay is seen, in steps of five hundredths. */
export function OpacitySlider({ value, onChange, onEnd }: OpacitySliderProps) {
  return (
    <Slider
      className="slider"
      value={value}
      minValue={0.05}
      maxValue={1}
      step={0.05}
      formatOptions={{ style: 'percent' }}
      onChange={onChange}
      {...(onEnd ? { onChangeEnd: onEnd } : {})}
    >
      <Label>{words.underlay.list.opacity}</Label>
      <SliderOutput />
      <SliderTrack className="slider-track">
        <SliderThumb className="slider-thumb" />
      </SliderTrack>
    </Slider>
  );
}
