import { useState } from 'react';
import { FieldError, Input, Label, TextField } from 'react-aria-components';
import { words } from '../../words/index.ts';
import { fieldKeys } from '../field-keys.ts';

interface NameFieldProps {
  readonly label: string;
  readonly value: string;
  readonly onCommit: (name: string) => void;
  /** Why a name is not taken; undefined where it is. */
  readonly refuse?: (name: string) => string | undefined;
}

/** A name that is taken when the field is left; an empty one is not. */
export function NameField({ label, value, onCommit, refuse }: NameFieldProps) {
  const [text, setText] = useState<string | null>(null);
  const name = text?.trim() ?? value;
  const wrong = text === null ? undefined : name === '' ? words.kitchen.reading.nameNeeded : refuse?.(name);
  const take = () => {
    if (text === null || wrong !== undefined) return;
    setText(null);
    if (name !== value) onCommit(name);
  };
  return (
    <TextField
      className="field"
      value={text ?? value}
      isInvalid={wrong !== undefined}
      onChange={setText}
      onBlur={take}
      onKeyDown={fieldKeys({
        take,
        drop: () => {
          setText(null);
          return text !== null;
        },
      })}
    >
      <Label>{label}</Label>
      <Input spellCheck={false} autoComplete="off" />
      <FieldError className="field-error">{wrong}</FieldError>
    </TextField>
  );
}
