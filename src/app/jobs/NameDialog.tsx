import { type ReactNode, useState } from 'react';
import { Form, Input, Label, TextField } from 'react-aria-components';
import { DialogBox, DialogFoot } from '../DialogBox.tsx';

interface NameDialogProps {
  readonly title: string;
  readonly label: string;
  readonly value: string;
  readonly take: string;
  readonly onTake: (name: string) => void;
  readonly onClose: () => void;
  /** What is to be known before. */
  readonly lead?: string;
  /** What else is asked. */
  readonly children?: ReactNode;
}

/** Asks for a name. */
export function NameDialog({ title, label, value, take, onTake, onClose, lead, children }: NameDialogProps) {
  const [name, setName] = useState(value);
  const trimmed = name.trim();
  return (
    <DialogBox title={title} isOpen onClose={onClose}>
      {lead && <p className="dialog-lead">{lead}</p>}
      <Form
        className="dialog-form"
        onSubmit={(event) => {
          event.preventDefault();
          if (trimmed === '') return;
          onTake(trimmed.slice(0, 300));
          onClose();
        }}
      >
        <TextField className="field" value={name} onChange={setName} autoFocus>
          <Label>{label}</Label>
          <Input autoComplete="off" spellCheck={false} onFocus={(event) => event.target.select()} />
        </TextField>
        {children}
        <DialogFoot onLeave={onClose} focus="field" main={{ label: take, isDisabled: trimmed === '' }} />
      </Form>
    </DialogBox>
  );
}
