import { useEffect, useState } from 'react';
import type { OpenedFile } from '../../files/open-save.ts';
import type { SheetId } from '../../graph/sheet.ts';
import { words } from '../../words/index.ts';
import type { App } from '../command.ts';
import { useApp } from '../context.ts';
import { sheetNames } from '../underlay/sheet-names.ts';
import { type DropHint, hintOf, planOf } from './drop.ts';

const says = words.jobs.drop;

interface Over {
  readonly hint: DropHint;
  readonly count: number;
  readonly sheet: SheetId | null;
}

/**
 * Files dropped on the window: jobs are opened, an export is imported, a picture is laid under the sheet that it is
 * dropped on. What is none of these is refused with a sentence, and never takes the page's place.
 */
export function DropFiles() {
  const app = useApp();
  const [over, setOver] = useState<Over | null>(null);
  useEffect(() => {
    const carriesFile = (event: DragEvent) => event.dataTransfer?.types.includes('Files') === true;
    const drag = (event: DragEvent) => {
      if (!carriesFile(event) || !event.dataTransfer) return;
      event.preventDefault();
      event.dataTransfer.dropEffect = 'copy';
      const types = [...event.dataTransfer.items]
        .filter(({ kind }) => kind === 'file')
        .map(({ type }) => type);
      const sheet = sheetUnder(event);
      setOver({ hint: hintOf(types, sheet !== null), count: types.length, sheet });
    };
    const leave = (event: DragEvent) => {
      if (event.relatedTarget === null) setOver(null);
    };
    const drop = (event: DragEvent) => {
      if (!carriesFile(event) || !event.dataTransfer) return;
      event.preventDefault();
      setOver(null);
      void taken(app, filesOf(event.dataTransfer), sheetUnder(event));
    };
    window.addEventListener('dragover', drag);
    window.addEventListener('dragleave', leave);
    window.addEventListener('drop', drop);
    return () => {
      window.removeEventListener('dragover', drag);
      window.removeEventListener('dragleave', leave);
      window.removeEventListener('drop', drop);
    };
  }, [app]);
  if (!over) return null;
  const [text, more] = hintText(over);
  return (
    <div className="drop-cover" data-hint={over.hint}>
      <p className="drop-hint">
        <strong>{text}</strong>
        {more && <span>{more}</span>}
      </p>
    </div>
  );
}

function hintText({ hint, count, sheet }: Over): readonly [string, string?] {
  if (hint === 'job') return [says.job, says.jobHint];
  if (hint === 'jobs') return [says.jobs(count), says.jobsHint];
  if (hint === 'archive') return [says.archive, words.jobs.archive.kept];
  if (hint === 'lay' && sheet) return [says.lay(sheetNames[sheet])];
  if (hint === 'to a sheet') return [says.toSheet];
  return [says.any, says.anyHint];
}

interface Dropped {
  readonly name: string;
  readonly type: string;
  readonly file: File;
  /** Asked for while the drop is handled: later the browser does not lend it any more. */
  readonly handle: Promise<FileSystemFileHandle | null>;
}

function filesOf({ items }: DataTransfer): Dropped[] {
  return [...items].flatMap((item) => {
    const file = item.kind === 'file' ? item.getAsFile() : null;
    return file ? [{ name: file.name, type: file.type, file, handle: handleOf(item) }] : [];
  });
}

async function handleOf(item: DataTransferItem): Promise<FileSystemFileHandle | null> {
  const lending = item as DataTransferItem & { getAsFileSystemHandle?(): Promise<FileSystemHandle | null> };
  const handle = await lending.getAsFileSystemHandle?.().catch(() => null);
  return handle?.kind === 'file' ? (handle as FileSystemFileHandle) : null;
}

async function taken(app: App, dropped: readonly Dropped[], sheet: SheetId | null): Promise<void> {
  const plan = planOf(dropped, sheet !== null);
  if (!plan) return;
  if (plan.do === 'lay') return sheet ? app.underlays.read(plan.file.file, sheet) : undefined;
  if (plan.do === 'import') return app.jobs.importAll(plan.file.file);
  if (plan.do === 'open') {
    const files = plan.files.map(
      async ({ name, file, handle }): Promise<OpenedFile> => ({
        name,
        handle: await handle,
        text: await file.text(),
      }),
    );
    app.ui.setState({ jobs: null });
    return app.files.take(await Promise.all(files));
  }
  const why = { beside: says.pictureBeside, several: says.onePicture, unknown: says.unknown }[plan.why];
  app.ui.setState({ notice: { title: says.notOne(plan.file.name), text: why, details: [] } });
}

function sheetUnder(event: DragEvent): SheetId | null {
  const element = event.target instanceof Element ? event.target.closest<HTMLElement>('[data-sheet]') : null;
  return (element?.dataset.sheet as SheetId | undefined) ?? null;
}
