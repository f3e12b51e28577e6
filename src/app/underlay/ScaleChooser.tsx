import { Button, Label, ListBox, ListBoxItem, Popover, Select, SelectValue } from 'react-aria-components';
import { words } from '../../words/index.ts';
import { useBoard } from '../context.ts';
import { Icon } from '../icons.tsx';
import { drawingScales } from './scales.ts';

const says = words.underlay.place;

interface ScaleChooserProps {
  /** 50 for 1:50; `null` for two points. */
  readonly ratio: number | null;
  readonly onChoose: (ratio: number | null) => void;
}

/** The scale that is written on a drawing, for a page whose size on paper is known. */
export function ScaleChooser({ ratio, onChoose }: ScaleChooserProps) {
  const units = useBoard((state) => state.units);
  const scales = drawingScales(units);
  return (
    <Select
      className="field"
      value={ratio === null ? 'points' : String(ratio)}
      onChange={(key) => onChoose(key === 'points' ? null : Number(key))}
    >
      <Label>{says.scale}</Label>
      <Button className="field-button">
        <SelectValue>{({ selectedText }) => selectedText}</SelectValue>
        <Icon name="down" size={14} />
      </Button>
      <Popover className="popover">
        <ListBox className="menu list-box">
          <ListBoxItem id="points" textValue={says.byPoints}>
            {says.byPoints}
            <small>{says.byPointsMeans}</small>
          </ListBoxItem>
          {scales.map((scale) => (
            <ListBoxItem key={scale.ratio} id={String(scale.ratio)}>
              {scale.name}
            </ListBoxItem>
          ))}
        </ListBox>
      </Popover>
    </Select>
  );
}
