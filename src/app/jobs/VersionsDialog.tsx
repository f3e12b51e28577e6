import { useEffect, useMemo, useState } from 'react';
import {
  Button,
  Dialog,
  Form,
  Heading,
  Input,
  Label,
  Menu,
  MenuItem,
  MenuTrigger,
  Modal,
  ModalOverlay,
  Popover,
  TextField,
} from 'react-aria-components';
import { portrayed, type SchemeSummary, type VersionCard } from '../../files/jobs/cards.ts';
import { words } from '../../words/index.ts';
import { useApp, useBoard, useJobs, useUi } from '../context.ts';
import { Icon } from '../icons.tsx';
import { NameDialog } from './NameDialog.tsx';
import { SketchPicture } from './SketchPicture.tsx';
import { againstText, sizeText, versionText, whenText } from './text.ts';
import './jobs.css';

const says = words.jobs.versions;

/** How the job on the board was at earlier times, and the way back there. */
export default function VersionsDialog() {
  const { ui } = useApp();
  const open = useUi((state) => state.versions);
  const close = () => ui.setState({ versions: false });
  return (
    <ModalOverlay className="overlay" isOpen={open} isDismissable onOpenChange={(next) => !next && close()}>
      <Modal className="modal versions-modal">
        <Dialog className="dialog">
          <Content close={close} />
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

function Content({ close }: { close: () => void }) {
  const { board, jobs } = useApp();
  const job = useBoard((state) => state.job);
  const units = useBoard((state) => state.units);
  const list = useJobs((state) => state.versions);
  const [naming, setNaming] = useState<VersionCard | null>(null);
  const now = useMemo(() => portrayed(job, board.solutionOf), [job, board]);
  useEffect(() => void jobs.load(), [jobs]);
  const unnamed = list.filter(({ reason }) => reason !== 'named');
  const title = job.title.trim() === '' ? words.jobs.untitled : job.title;
  return (
    <>
      <Heading slot="title">{says.title(title)}</Heading>
      <p className="jobs-lead">{says.lead}</p>
      <div className="version version-now">
        <SketchPicture sketch={now.sketch} summary={now.summary} />
        <div>
          <h3>{says.now}</h3>
          <p>{versionText(now.summary, units)}</p>
        </div>
        <KeepForm />
      </div>
      {list.length === 0 ? (
        <div className="jobs-none">
          <h3>{says.none.title}</h3>
          <p>{says.none.text}</p>
        </div>
      ) : (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls is reached by keys
        <section className="versions-scroll" aria-label={says.list} tabIndex={0}>
          <ol className="versions">
            {list.map((version) => (
              <Version
                key={version.id}
                version={version}
                now={now.summary}
                close={close}
                rename={() => setNaming(version)}
              />
            ))}
          </ol>
        </section>
      )}
      <div className="dialog-buttons">
        {unnamed.length > 1 && (
          <Button
            className="button versions-thin"
            onPress={() => void jobs.dropVersions(unnamed.map(({ id }) => id))}
          >
            {says.thin}
          </Button>
        )}
        <Button className="button primary" autoFocus onPress={close}>
          {says.close}
        </Button>
      </div>
      {naming && (
        <NameDialog
          title={says.newName}
          label={says.newName}
          value={naming.reason === 'named' ? naming.name : ''}
          take={says.take}
          cancel={says.cancel}
          onTake={(name) => void jobs.renameVersion(naming.id, name)}
          onClose={() => setNaming(null)}
        />
      )}
    </>
  );
}

function KeepForm() {
  const { jobs } = useApp();
  const [name, setName] = useState('');
  const trimmed = name.trim();
  return (
    <Form
      className="version-keep"
      onSubmit={(event) => {
        event.preventDefault();
        if (trimmed === '') return;
        void jobs.keepVersion(trimmed.slice(0, 200));
        setName('');
      }}
    >
      <TextField className="field" value={name} onChange={setName}>
        <Label>{says.name}</Label>
        <Input placeholder={says.namePlaceholder} autoComplete="off" spellCheck={false} />
      </TextField>
      <Button className="button" type="submit" isDisabled={trimmed === ''}>
        {says.keep}
      </Button>
    </Form>
  );
}

interface VersionProps {
  readonly version: VersionCard;
  readonly now: readonly SchemeSummary[];
  readonly close: () => void;
  readonly rename: () => void;
}

function Version({ version, now, close, rename }: VersionProps) {
  const { jobs } = useApp();
  const units = useBoard((state) => state.units);
  const { id, at, reason, name, summary, sketch, size } = version;
  const when = whenText(at);
  const named = reason === 'named';
  const called = named ? name : when;
  const act = (what: string) => {
    if (what === 'rename') rename();
    if (what === 'unname') void jobs.renameVersion(id, '');
    if (what === 'delete') void jobs.dropVersions([id]);
  };
  return (
    <li className="version" data-named={named || undefined}>
      <SketchPicture sketch={sketch} summary={summary} />
      <div>
        <h3>{called}</h3>
        <p>
          {named ? `${when} · ` : ''}
          {reason === 'before' ? says.reason.before(name) : says.reason[reason]}
          <span className="version-size">{sizeText(size)}</span>
        </p>
        <p>
          {versionText(summary, units)}{' '}
          <span className="version-against">{againstText(summary, now, units)}</span>
        </p>
      </div>
      <div className="version-acts">
        <Button
          className="button"
          aria-label={`${says.restore}: ${called}`}
          onPress={() => {
            void jobs.restore(id);
            close();
          }}
        >
          {says.restore}
        </Button>
        <Button
          className="button"
          aria-label={`${says.copy}: ${called}`}
          onPress={() => {
            void jobs.copyVersion(id);
            close();
          }}
        >
          {says.copy}
        </Button>
        <MenuTrigger>
          <Button className="icon-button" aria-label={says.more(when)}>
            <Icon name="more" size={18} />
          </Button>
          <Popover className="popover">
            <Menu className="menu" aria-label={says.more(when)} onAction={(what) => act(String(what))}>
              <MenuItem id="rename">{says.rename}</MenuItem>
              {named ? <MenuItem id="unname">{says.unname}</MenuItem> : null}
              <MenuItem id="delete">{says.delete}</MenuItem>
            </Menu>
          </Popover>
        </MenuTrigger>
      </div>
    </li>
  );
}
