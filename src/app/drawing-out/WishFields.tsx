import {
  Button,
  Checkbox,
  Label,
  ListBox,
  ListBoxItem,
  Popover,
  Radio,
  RadioGroup,
  Select,
  SelectValue,
} from 'react-aria-components';
import type { Theme } from '../../drawing/palette.ts';
import { standardScales } from '../../drawing/standard-scale.ts';
import { allSheets } from '../../files/drawing-out/layout.ts';
import type { UnitSystem } from '../../graph/document.ts';
import { words } from '../../words/index.ts';
import { QuantityField } from '../controls.tsx';
import { Icon } from '../icons.tsx';
import { readPlain } from '../kitchen/reading.ts';
import type { DrawingFormat, Wishes } from './make.ts';

const says = words.drawings.dialog;

interface WishFieldsProps {
  readonly wishes: Wishes;
  /** The scale that the drawing has. */
  readonly scale: number;
  readonly units: UnitSystem;
  readonly onChange: (wishes: Wishes) => void;
}

/** What is drawn, how large and in what colours; fields that a format has no use for are left out. */
export function WishFields({ wishes, scale, units, onChange }: WishFieldsProps) {
  const { format } = wishes;
  const set = (change: Partial<Wishes>) => onChange({ ...wishes, ...change });
  const sheets = ['all', ...allSheets, ...(format === 'dxf' ? (['space'] as const) : [])] as const;
  const scales = standardScales[units];
  return (
    <div className="drawing-fields">
      <Choices
        label={says.format}
        value={format}
        choices={says.formats}
        onChoose={(next) =>
          set({ format: next as DrawingFormat, ...(wishes.sheet === 'space' && { sheet: 'all' }) })
        }
      />
      <p className="field-note">{says.about[format]}</p>
      <Picker
        label={says.sheet}
        value={wishes.sheet}
        options={sheets.map((id) => [id, says.sheets[id]])}
        onChoose={(sheet) => set({ sheet: sheet as Wishes['sheet'] })}
      />
      {wishes.sheet !== 'space' && (
        <Picker
          label={says.scale}
          value={String(scale)}
          options={scales.map((one) => [String(one), words.drawings.scaleName(one)])}
          onChoose={(one) => set({ scale: Number(one) })}
        />
      )}
      {format === 'png' && (
        <QuantityField
          label={says.resolution}
          value={says.resolutions(wishes.dpi)}
          parse={(text) => readPlain(text, { ...resolution, unit: /\s*(dpi|dots.*)$/i })}
          onCommit={(dpi) => set({ dpi })}
        />
      )}
      {format !== 'dxf' && (
        <>
          <Choices
            label={says.colours}
            value={wishes.theme}
            choices={says.palettes}
            onChoose={(theme) => set({ theme: theme as Theme })}
          />
          <Choices
            label={says.background}
            value={wishes.paper ? 'paper' : 'none'}
            choices={says.backgrounds}
            onChoose={(next) => set({ paper: next === 'paper' })}
          />
        </>
      )}
      {wishes.sheet !== 'space' && (
        <Checkbox className="tick" isSelected={wishes.values} onChange={(values) => set({ values })}>
          <span className="tick-box" aria-hidden="true" />
          {format === 'dxf' ? says.valuesInWords : says.values}
        </Checkbox>
      )}
      {format === 'svg' && (
        <Checkbox className="tick" isSelected={wishes.font} onChange={(font) => set({ font })}>
          <span className="tick-box" aria-hidden="true" />
          {says.font}
        </Checkbox>
      )}
    </div>
  );
}

const resolution = { what: says.resolution, low: 36, high: 1200, whole: true };

interface ChoicesProps {
  readonly label: string;
  readonly value: string;
  readonly choices: Readonly<Record<string, string>>;
  readonly onChoose: (id: string) => void;
}

function Choices({ label, value, choices, onChoose }: ChoicesProps) {
  return (
    <RadioGroup className="field choice" value={value} onChange={onChoose} orientation="horizontal">
      <Label>{label}</Label>
      <div className="drawing-radios">
        {Object.entries(choices).map(([id, text]) => (
          <Radio key={id} value={id} className="radio">
            {text}
          </Radio>
        ))}
      </div>
    </RadioGroup>
  );
}

interface PickerProps {
  readonly label: string;
  readonly value: string;
  readonly options: readonly (readonly [string, string])[];
  readonly onChoose: (id: string) => void;
}

function Picker({ label, value, options, onChoose }: PickerProps) {
  return (
    <Select className="field" value={value} onChange={(key) => key !== null && onChoose(String(key))}>
      <Label>{label}</Label>
      <Button className="field-button">
        <SelectValue />
        <Icon name="down" size={14} />
      </Button>
      <Popover className="popover">
        <ListBox className="menu list-box">
          {options.map(([id, text]) => (
            <ListBoxItem key={id} id={id} textValue={text}>
              {text}
            </ListBoxItem>
          ))}
        </ListBox>
      </Popover>
    </Select>
  );
}
