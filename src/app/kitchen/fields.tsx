import { Button, Label, ListBox, ListBoxItem, Popover, Select, SelectValue } from 'react-aria-components';
import { words } from '../../words/index.ts';
import { Icon } from '../icons.tsx';

interface ChoiceProps<Id extends string> {
  readonly label: string;
  readonly choices: readonly { readonly id: Id; readonly name: string; readonly what?: string }[];
  readonly value: Id | null;
  readonly placeholder?: string;
  readonly onChoose: (id: Id) => void;
}

/** One of a few words. */
export function Choice<Id extends string>({ label, choices, value, placeholder, onChoose }: ChoiceProps<Id>) {
  return (
    <Select
      className="field"
      value={value}
      onChange={(key) => {
        const chosen = choices.find((choice) => choice.id === key);
        if (chosen && chosen.id !== value) onChoose(chosen.id);
      }}
    >
      <Label>{label}</Label>
      <Button className="field-button">
        <SelectValue>
          {({ selectedText }) => selectedText || (placeholder ?? words.kitchen.reading.choose)}
        </SelectValue>
        <Icon name="down" size={14} />
      </Button>
      <Popover className="popover">
        <ListBox className="menu list-box">
          {choices.map((choice) => (
            <ListBoxItem key={choice.id} id={choice.id} textValue={choice.name}>
              {choice.name}
              {choice.what && <small>{choice.what}</small>}
            </ListBoxItem>
          ))}
        </ListBox>
      </Popover>
    </Select>
  );
}
