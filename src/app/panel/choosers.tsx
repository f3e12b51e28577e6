import { useState } from 'react';
import {
  Button,
  ComboBox,
  FieldError,
  Input,
  Label,
  ListBox,
  ListBoxItem,
  Popover,
  Select,
  SelectValue,
} from 'react-aria-components';
import type { CatalogueRow } from '../../hydraulics/catalogue.ts';
import type { Section } from '../../hydraulics/types.ts';
import { words } from '../../words/index.ts';
import { useBoard } from '../context.ts';
import { fieldKeys } from '../field-keys.ts';
import { Icon } from '../icons.tsx';
import { parseSection, sectionText, sizesOf } from '../section-text.ts';

const says = words.panels.choose;

interface RowChooserProps {
  readonly label: string;
  readonly rows: readonly Pick<CatalogueRow, 'id' | 'name' | 'what'>[];
  /** A row's id; empty for none. */
  readonly value: string;
  readonly onChoose: (id: string) => void;
}

/** One row of the catalogue, each told in a sentence. */
export function RowChooser({ label, rows, value, onChoose }: RowChooserProps) {
  return (
    <Select
      className="field"
      value={value === '' ? null : value}
      onChange={(key) => {
        if (key !== null && key !== value) onChoose(String(key));
      }}
    >
      <Label>{label}</Label>
      <Button className="field-button">
        <SelectValue>{({ selectedText }) => selectedText || value || says.choose}</SelectValue>
        <Icon name="down" size={14} />
      </Button>
      <Popover className="popover">
        <ListBox className="menu list-box">
          {rows.map((row) => (
            <ListBoxItem key={row.id} id={row.id} textValue={row.name}>
              {row.name}
              <small>{row.what}</small>
            </ListBoxItem>
          ))}
        </ListBox>
      </Popover>
    </Select>
  );
}

interface SectionChooserProps {
  readonly label: string;
  readonly value: Section;
  readonly onChoose: (section: Section) => void;
}

/** A duct size from the catalogue, or typed. */
export function SectionChooser({ label, value, onChoose }: SectionChooserProps) {
  const units = useBoard((state) => state.units);
  const [text, setText] = useState<string | null>(null);
  const [error, setError] = useState<string | null>(null);
  const shown = sectionText(value, units);
  const take = (typed: string) => {
    if (typed.trim() === '' || typed === shown) {
      setText(null);
      setError(null);
      return;
    }
    const read = parseSection(typed, units);
    setError(read.ok ? null : read.message);
    if (!read.ok) return;
    setText(null);
    onChoose(read.value);
  };
  return (
    <ComboBox
      className="field"
      allowsCustomValue
      menuTrigger="manual"
      isInvalid={error !== null}
      inputValue={text ?? shown}
      onInputChange={(next) => {
        setText(next === shown ? null : next);
        setError(null);
      }}
      onChange={(key) => {
        const size = sizesOf(units).find((row) => row.id === key);
        if (size) {
          setText(null);
          setError(null);
          onChoose(size.section);
        }
      }}
      onBlur={() => take(text ?? shown)}
      onKeyDown={fieldKeys({
        take: () => take(text ?? shown),
        drop: () => {
          setText(null);
          setError(null);
          return text !== null;
        },
      })}
      defaultFilter={() => true}
    >
      <Label>{label}</Label>
      <div className="combo">
        <Input spellCheck={false} />
        <Button className="combo-button" aria-label={says.sizes}>
          <Icon name="down" size={14} />
        </Button>
      </div>
      <FieldError className="field-error">{error}</FieldError>
      <Popover className="popover">
        <ListBox className="menu list-box">
          {sizesOf(units).map((row) => (
            <ListBoxItem key={row.id} id={row.id}>
              {row.name}
            </ListBoxItem>
          ))}
        </ListBox>
      </Popover>
    </ComboBox>
  );
}
