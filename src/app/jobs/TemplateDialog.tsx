import { useState } from 'react';
import {
  Button,
  Checkbox,
  Dialog,
  Form,
  Heading,
  Input,
  Label,
  Modal,
  ModalOverlay,
  TextField,
} from 'react-aria-components';
import { words } from '../../words/index.ts';
import { useApp, useBoard, useUi } from '../context.ts';
import { Icon } from '../icons.tsx';
import './jobs.css';

const says = words.jobs.template.save;

/** Asks what a template shall be called and whether the route goes with it. */
export default function TemplateDialog() {
  const { ui } = useApp();
  const open = useUi((state) => state.savingTemplate);
  const close = () => ui.setState({ savingTemplate: false });
  return (
    <ModalOverlay className="overlay" isOpen={open} isDismissable onOpenChange={(next) => !next && close()}>
      <Modal className="modal">
        <Dialog className="dialog">
          <Heading slot="title">{says.title}</Heading>
          <p>{says.lead}</p>
          <Fields close={close} />
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

function Fields({ close }: { close: () => void }) {
  const { jobs } = useApp();
  const title = useBoard((state) => state.job.title);
  const [name, setName] = useState(title);
  const [withRoute, setWithRoute] = useState(false);
  const trimmed = name.trim();
  return (
    <Form
      className="name-form"
      onSubmit={(event) => {
        event.preventDefault();
        if (trimmed === '') return;
        void jobs.saveTemplate(trimmed.slice(0, 300), withRoute);
        close();
      }}
    >
      <TextField className="field" value={name} onChange={setName} autoFocus>
        <Label>{says.name}</Label>
        <Input autoComplete="off" spellCheck={false} onFocus={(event) => event.target.select()} />
      </TextField>
      <Checkbox className="check" isSelected={withRoute} onChange={setWithRoute}>
        <span className="check-box" aria-hidden="true">
          <Icon name="tick" size={12} />
        </span>
        {says.route}
      </Checkbox>
      <div className="dialog-buttons">
        <Button className="button" onPress={close}>
          {says.cancel}
        </Button>
        <Button className="button primary" type="submit" isDisabled={trimmed === ''}>
          {says.save}
        </Button>
      </div>
    </Form>
  );
}
