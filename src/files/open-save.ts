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

/**
 * Writes `text` to `file` in place where it has a handle; otherwise lets the person choose where, or
 * downloads it in a browser that cannot ask. `null` when they change their mind.
 */
export async function saveJobFile(text: string, file: ChosenFile): Promise<ChosenFile | null> {
  try {
    const blob = new Blob([text], { type: 'application/json' });
    const handle = await fileSave(blob, { ...kind, fileName: file.name }, file.handle);
    return { name: handle?.name ?? file.name, handle };
  } catch (error) {
    if (isChangeOfMind(error)) return null;
    throw error;
  }
}

/** A file name for a job's title: letters, digits and hyphens, with the format's ending. */
export function fileNameFor(title: string): string {
  const stem = title
    .normalize('NFKD')
    .replace(/\p{Mark}/gu, '')
    .replace(/[^\p{Letter}\p{Number}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 80)
    .toLowerCase();
  return `${stem === '' ? 'kitchen' : stem}.gentlebend.json`;
}

function isChangeOfMind(error: unknown): boolean {
  return error instanceof DOMException && error.name === 'AbortError';
}
