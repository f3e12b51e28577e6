import { useState } from 'react';
import {
  Button,
  Dialog,
  Form,
  Heading,
  Input,
  Label,
  Modal,
  ModalOverlay,
  TextField,
} from 'react-aria-components';
import './jobs.css';

interface NameDialogProps {
  readonly title: string;
  readonly label: string;
  readonly value: string;
  readonly take: string;
  readonly cancel: string;
  readonly onTake: (name: string) => void;
  readonly onClose: () => void;
}

/** Asks for a name. */
export function NameDialog({ title, label, value, take, cancel, onTake, onClose }: NameDialogProps) {
  const [name, setName] = useState(value);
  const trimmed = name.trim();
  return (
    <ModalOverlay className="overlay" isOpen isDismissable onOpenChange={(open) => !open && onClose()}>
      <Modal className="modal">
        <Dialog className="dialog">
          <Heading slot="title">{title}</Heading>
          <Form
            className="name-form"
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
            <div className="dialog-buttons">
              <Button className="button" onPress={onClose}>
                {cancel}
              </Button>
              <Button className="button primary" type="submit" isDisabled={trimmed === ''}>
                {take}
              </Button>
            </div>
          </Form>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
