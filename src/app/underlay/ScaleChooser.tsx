import { Button, Label, ListBox, ListBoxItem, Popover, Select, SelectValue } from 'react-aria-components';
import { useBoard } from '../context.ts';
import { Icon } from '../icons.tsx';
import { drawingScales } from './scales.ts';

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
      <Label>Scale of the drawing on its paper</Label>
      <Button className="field-button">
        <SelectValue>{({ selectedText }) => selectedText}</SelectValue>
        <Icon name="down" size={14} />
      </Button>
      <Popover className="popover">
        <ListBox className="menu list-box">
          <ListBoxItem id="points" textValue="By two points, next">
            By two points, next
            <small>Click two points whose distance you know. Surest for a scan or a copy.</small>
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
