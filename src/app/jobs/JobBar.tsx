import { useEffect } from 'react';
import { Button } from 'react-aria-components';
import { formatPercent } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useApp, useFiles, useJobs } from '../context.ts';

const { hold: held, room } = words.jobs;

interface News {
  readonly kind: 'calm' | 'danger';
  readonly text: string;
  readonly more: string;
  readonly acts: readonly { readonly label: string; readonly run: () => void; readonly first?: boolean }[];
}

/** A line under the top bar while another tab has the job, or the browser cannot keep it. */
export function JobBar() {
  const { say } = useApp();
  const news = useNews();
  const text = news?.text ?? '';
  useEffect(() => {
    if (text !== '') say(text);
  }, [text, say]);
  if (!news) return null;
  return (
    <section className="job-bar" data-kind={news.kind} aria-label={held.region}>
      <p>
        <strong>{news.text}</strong> {news.more}
      </p>
      {news.acts.map(({ label, run, first }) => (
        <Button key={label} className={first ? 'button primary' : 'button'} onPress={run}>
          {label}
        </Button>
      ))}
    </section>
  );
}

function useNews(): News | null {
  const { ui, files, jobs } = useApp();
  const { hold, reason, keeping, safe, unsaved } = useFiles((state) => state);
  const lasting = useJobs((state) => state.lasting);
  const near = useJobs((state) => state.nearlyFull);
  const estimate = useJobs((state) => state.room);
  const save = { label: room.save, run: () => void files.save(), first: true };
  const makeRoom = { label: room.makeRoom, run: () => ui.setState({ jobs: 'jobs' }) };

  if (hold === 'asking') return { kind: 'calm', text: held.asking, more: '', acts: [] };
  if (hold === 'elsewhere' || hold === 'yielding') {
    const [text, more] =
      reason === 'yielded'
        ? [held.yielded, held.yieldedMore]
        : reason === 'seized'
          ? [held.seized, held.seizedMore]
          : [held.elsewhere, held.elsewhereMore];
    const takeOver = { label: held.takeOver, run: () => void files.takeOver(), first: true };
    const copy = { label: held.copy, run: () => void files.copy() };
    return { kind: 'calm', text, more, acts: hold === 'elsewhere' ? [takeOver, copy] : [] };
  }
  if (keeping === 'full')
    return {
      kind: 'danger',
      text: room.full,
      more: safe ? room.fullSafe : room.fullMore,
      acts: [save, makeRoom],
    };
  if (keeping === 'failing')
    return { kind: 'danger', text: room.failing, more: room.failingMore, acts: [save] };
  if (!lasting && unsaved)
    return { kind: 'danger', text: room.nothing, more: room.nothingMore, acts: [save] };
  if (near && estimate)
    return {
      kind: 'calm',
      text: room.near(formatPercent(estimate.usage / estimate.quota)),
      more: room.nearMore,
      acts: [makeRoom, { label: room.dismiss, run: jobs.dismiss }],
    };
  return null;
}
