import type { ReadResult } from '../../files/read.ts';
import { words } from '../../words/index.ts';
import type { App } from '../command.ts';
import { refusal, repaired } from '../notices.ts';
import { beginning, type Start } from '../start.ts';

/** The mark that an address with a job in it carries; the reader itself is loaded when one comes. */
const mark = '#job=';

const { name } = words.share.link;

async function readLink(address: string): Promise<ReadResult> {
  const { readShared } = await import('../../files/share.ts');
  return readShared(address);
}

/**
 * What a page begins with that was opened by a link: the job in it as a new one, or the reason why there is
 * none with what the page shows `otherwise`. The work of this browser is not touched.
 */
export async function startShared(hash: string, otherwise: () => Promise<Start>): Promise<Start> {
  if (!hash.startsWith(mark)) return otherwise();
  const read = await readLink(hash);
  if (!read.ok) return { ...(await otherwise()), notice: refusal(name, read.problems) };
  return {
    ...beginning(read.job),
    fresh: false,
    unsaved: true,
    ...(read.repairs.length > 0 ? { notice: repaired(name, read.repairs) } : {}),
  };
}

/** Opens the job of a link beside the work on the board; the reasons where there is none. */
export async function openShared(app: App, address: string): Promise<ReadResult> {
  const read = await readLink(address);
  if (!read.ok) return read;
  await app.files.add(read.job);
  if (read.repairs.length > 0) app.ui.setState({ notice: repaired(name, read.repairs) });
  return read;
}

/**
 * A link that is put into the address of a page that is open already loads nothing: it is read here. It stays in
 * the address until its job is kept, so that a page loaded again before then reads it again.
 */
export function listenForLinks(app: App): void {
  window.addEventListener('hashchange', () => {
    const { hash, pathname } = window.location;
    if (!hash.startsWith(mark)) return;
    void openShared(app, hash).then((read) => {
      if (window.location.hash === hash) window.history.replaceState(null, '', pathname);
      if (!read.ok) app.ui.setState({ notice: refusal(name, read.problems) });
    });
  });
}
