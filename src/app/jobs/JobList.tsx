import { useState } from 'react';
import { Button, GridList, GridListItem, Menu, MenuItem, MenuTrigger, Popover } from 'react-aria-components';
import type { JobCard } from '../../files/jobs/cards.ts';
import { words } from '../../words/index.ts';
import { useApp, useBoard, useFiles, useJobs } from '../context.ts';
import { Icon } from '../icons.tsx';
import { NameDialog } from './NameDialog.tsx';
import { SketchPicture } from './SketchPicture.tsx';
import { sizeText, summaryText, whenText } from './text.ts';

const says = words.jobs.view;

interface JobListProps {
  readonly cards: readonly JobCard[];
  readonly search: string;
  readonly close: () => void;
  /** Lists what is deleted, to be brought back or thrown away. */
  readonly deleted?: boolean;
}

/** Jobs as cards with their drawing; the arrow keys go between them, Enter opens one. */
export function JobList({ cards, search, close, deleted = false }: JobListProps) {
  const { ui, jobs, files } = useApp();
  const here = useFiles((state) => state.id);
  const [renaming, setRenaming] = useState<JobCard | null>(null);
  const [gone, setGone] = useState<JobCard | null>(null);
  const shown = cards.filter((card) => matches(card, search));

  const open = async (card: JobCard) => {
    await (deleted ? jobs.bringBack(card.id) : files.bring(card.id));
    if (!deleted) close();
  };
  const act = (card: JobCard, what: string) => {
    if (what === 'open') void open(card);
    if (what === 'rename') setRenaming(card);
    if (what === 'duplicate') void jobs.duplicate(card.id);
    if (what === 'delete') void jobs.remove(card.id).then(() => setGone(card));
    if (what === 'back') void jobs.bringBack(card.id);
    if (what === 'throw') void jobs.throwAway([card.id]);
  };

  if (deleted && cards.length === 0) return <p className="jobs-empty">{says.noneDeleted}</p>;
  return (
    <>
      {deleted && (
        <p className="jobs-lead">
          {says.deletedLead}{' '}
          <Button className="text-button" onPress={() => void jobs.throwAway(cards.map(({ id }) => id))}>
            {says.throwAllAway}
          </Button>
        </p>
      )}
      {cards.length > 0 && shown.length === 0 && <p className="jobs-empty">{says.notFound(search.trim())}</p>}
      {shown.length > 0 && (
        <GridList
          className="job-grid"
          layout="grid"
          keyboardNavigationBehavior="tab"
          aria-label={deleted ? says.deleted : says.jobs}
          items={shown}
          dependencies={[here, deleted]}
          onAction={(id) => {
            const card = shown.find((one) => one.id === id);
            if (card) void open(card);
          }}
        >
          {(card) => <JobItem card={card} deleted={deleted} act={(what) => act(card, what)} />}
        </GridList>
      )}
      {!deleted && cards.every(({ id }) => id === here) && (
        <div className="jobs-none">
          <h3>{says.none.title}</h3>
          <p>{says.none.text}</p>
          <Button className="button" onPress={() => ui.setState({ jobs: 'templates' })}>
            {says.none.templates}
          </Button>
        </div>
      )}
      {gone && !deleted && (
        <p className="jobs-undo">
          {words.jobs.said.deleted(titleOf(gone))}
          <Button
            className="text-button"
            autoFocus
            onPress={() => {
              setGone(null);
              void jobs.bringBack(gone.id);
            }}
          >
            {says.undo}
          </Button>
        </p>
      )}
      {renaming && (
        <NameDialog
          title={says.rename.replace('…', '')}
          label={says.nameOf}
          value={renaming.title}
          take={says.take}
          onTake={(name) => void jobs.rename(renaming.id, name)}
          onClose={() => setRenaming(null)}
        />
      )}
    </>
  );
}

interface JobItemProps {
  readonly card: JobCard;
  readonly deleted: boolean;
  readonly act: (what: string) => void;
}

function JobItem({ card, deleted, act }: JobItemProps) {
  const units = useBoard((state) => state.units);
  const here = useFiles((state) => state.id) === card.id;
  const held = useJobs((state) => state.held.includes(card.id)) && !here;
  const title = titleOf(card);
  const { file } = card;
  return (
    <GridListItem id={card.id} className="job-card" textValue={title}>
      <SketchPicture sketch={card.sketch} summary={card.summary} />
      <div className="job-head">
        <h3>{title}</h3>
        <MenuTrigger>
          <Button className="icon-button job-more" aria-label={says.more(title)}>
            <Icon name="more" size={18} />
          </Button>
          <Popover className="popover">
            <Menu className="menu" aria-label={says.more(title)} onAction={(what) => act(String(what))}>
              {deleted ? (
                <>
                  <MenuItem id="back">{says.bringBack}</MenuItem>
                  <MenuItem id="throw">{says.throwAway}</MenuItem>
                </>
              ) : (
                <>
                  <MenuItem id="open">{says.open}</MenuItem>
                  <MenuItem id="rename" isDisabled={held}>
                    {says.rename}
                  </MenuItem>
                  <MenuItem id="duplicate">{says.duplicate}</MenuItem>
                  <MenuItem id="delete" isDisabled={held}>
                    {says.delete}
                  </MenuItem>
                </>
              )}
            </Menu>
          </Popover>
        </MenuTrigger>
      </div>
      <p className="job-what">{summaryText(card.summary, units)}</p>
      <p className="job-when">
        {deleted ? says.deletedAt(whenText(card.deletedAt ?? 0)) : says.changed(whenText(card.changedAt))}
        <span>{sizeText(card.size)}</span>
      </p>
      <p className="job-file">
        {here && <em>{says.here}</em>}
        {held && <em>{says.elsewhere}</em>}
        {file && (
          <span>{file.holds === card.digest ? says.inFile(file.name) : says.changedSince(file.name)}</span>
        )}
      </p>
    </GridListItem>
  );
}

function titleOf({ title }: JobCard): string {
  return title.trim() === '' ? words.jobs.untitled : title;
}

/** Each word that is searched for stands in the title or in the name of a scheme. */
function matches({ title, summary, file }: JobCard, search: string): boolean {
  const text = [title, file?.name ?? '', ...summary.map(({ name }) => name)].join(' ').toLocaleLowerCase();
  return search
    .toLocaleLowerCase()
    .split(/\s+/)
    .every((word) => text.includes(word));
}
