import { useEffect, useMemo, useState } from 'react';
import {
  Button,
  Form,
  Input,
  Label,
  Menu,
  MenuItem,
  MenuTrigger,
  Popover,
  TextField,
} from 'react-aria-components';
import { portrayed, type SchemeSummary, type VersionCard } from '../../files/jobs/cards.ts';
import { words } from '../../words/index.ts';
import { useApp, useBoard, useJobs, useUi } from '../context.ts';
import { DialogBox, DialogFoot, DialogScroll } from '../DialogBox.tsx';
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
  const title = useBoard((state) => state.job.title.trim());
  const close = () => ui.setState({ versions: false });
  return (
    <DialogBox
      width="wide"
      title={says.title(title === '' ? words.jobs.untitled : title)}
      isOpen={open}
      onClose={close}
    >
      <Content close={close} />
    </DialogBox>
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
  return (
    <>
      <p className="dialog-lead">{says.lead}</p>
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
        <DialogScroll label={says.list}>
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
        </DialogScroll>
      )}
      <DialogFoot onLeave={close}>
        {unnamed.length > 1 && (
          <Button className="button" onPress={() => void jobs.dropVersions(unnamed.map(({ id }) => id))}>
            {says.thin}
          </Button>
        )}
      </DialogFoot>
      {naming && (
        <NameDialog
          title={says.newName}
          label={says.newName}
          value={naming.reason === 'named' ? naming.name : ''}
          take={says.take}
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
