import { fileOpen, fileSave } from 'browser-fs-access';

/** A file that the person chose; `handle` where the browser can save it in place. */
export interface ChosenFile {
  readonly name: string;
  readonly handle: FileSystemFileHandle | null;
}

export interface OpenedFile extends ChosenFile {
  readonly text: string;
}

const kind = {
  description: 'Gentlebend job',
  extensions: ['.json'],
  mimeTypes: ['application/json'],
  id: 'gentlebend-job',
};

/** Lets the person choose a job file; `null` when they change their mind. */
export async function openJobFile(): Promise<OpenedFile | null> {
  try {
    const file = await fileOpen(kind);
    return { name: file.name, handle: file.handle ?? null, text: await file.text() };
  } catch (error) {
    if (isChangeOfMind(error)) return null;
    throw error;
  }
}

/** Why a file could not be written in place: it is not there any more, or the browser may not. */
export interface NotWritten {
  readonly problem: 'gone' | 'refused';
}

/**
 * Writes `text` to `file` in place where it has a handle, after asking for leave where the browser wants that again;
 * otherwise lets the person choose where, or downloads it in a browser that cannot ask. `null` when they change
 * their mind.
 */
export async function saveJobFile(text: string, file: ChosenFile): Promise<ChosenFile | NotWritten | null> {
  try {
    if (file.handle) {
      if (!(await permitted(file.handle, 'readwrite'))) return { problem: 'refused' };
      await file.handle.getFile();
    }
    const blob = new Blob([text], { type: 'application/json' });
    const handle = await fileSave(blob, { ...kind, fileName: file.name }, file.handle, true);
    return { name: handle?.name ?? file.name, handle };
  } catch (error) {
    if (isChangeOfMind(error)) return null;
    const name = error instanceof DOMException ? error.name : '';
    if (file.handle && name === 'NotFoundError') return { problem: 'gone' };
    if (file.handle && name === 'NotAllowedError') return { problem: 'refused' };
    throw error;
  }
}

/** What browsers that lend files add to their handles. */
interface Asking {
  queryPermission?(wish: { mode: 'read' | 'readwrite' }): Promise<PermissionState>;
  requestPermission?(wish: { mode: 'read' | 'readwrite' }): Promise<PermissionState>;
}

/** Whether a file may be used; the person is asked where the browser does not know yet. */
async function permitted(handle: FileSystemFileHandle, mode: 'read' | 'readwrite'): Promise<boolean> {
  const asking = handle as FileSystemFileHandle & Asking;
  const known = (await asking.queryPermission?.({ mode })) ?? 'granted';
  if (known !== 'prompt') return known === 'granted';
  return (await asking.requestPermission?.({ mode })) === 'granted';
}

/** The text of a file as it is now; `gone` where it is not there any more, `refused` where it may not be read. */
export async function textOf(
  handle: FileSystemFileHandle,
): Promise<'gone' | 'refused' | { readonly text: string }> {
  try {
    if (!(await permitted(handle, 'read'))) return 'refused';
    return { text: await (await handle.getFile()).text() };
  } catch (error) {
    return error instanceof DOMException && error.name === 'NotFoundError' ? 'gone' : 'refused';
  }
}

const archiveKind = {
  description: 'Gentlebend export',
  extensions: ['.zip'],
  mimeTypes: ['application/zip'],
  id: 'gentlebend-export',
};

/** Lets the person choose an export to import; `null` when they change their mind. */
export async function chooseArchive(): Promise<File | null> {
  try {
    return await fileOpen(archiveKind);
  } catch (error) {
    if (isChangeOfMind(error)) return null;
    throw error;
  }
}

/** Saves an export where the person chooses, or downloads it; false when they change their mind. */
export async function saveArchive(bytes: Uint8Array, name: string): Promise<boolean> {
  try {
    const blob = new Blob([bytes as BlobPart], { type: 'application/zip' });
    await fileSave(blob, { ...archiveKind, fileName: name });
    return true;
  } catch (error) {
    if (isChangeOfMind(error)) return false;
    throw error;
  }
}

/** A file name for a job's title: letters, digits and hyphens, with the format's ending. */
export function fileNameFor(title: string): string {
  return `${stemFor(title)}.gentlebend.json`;
}

/** What every file of a job is named by: its title in letters, digits and hyphens. */
export function stemFor(title: string): string {
  const stem = title
    .normalize('NFKD')
    .replace(/\p{Mark}/gu, '')
    .replace(/[^\p{Letter}\p{Number}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 80)
    .toLowerCase();
  return stem === '' ? 'kitchen' : stem;
}

function isChangeOfMind(error: unknown): boolean {
  return error instanceof DOMException && error.name === 'AbortError';
}
