import { fileSave } from 'browser-fs-access';

export interface SavedKind {
  readonly name: string;
  /** With its dot: `.svg`. */
  readonly extension: string;
  readonly mimeType: string;
  readonly description: string;
}

/**
 * Lets the person choose where a file goes, or downloads it in a browser that cannot ask. The place is asked for
 * at once, while the contents may still be in the making. `false` when they change their mind; contents that fail
 * after that, or after saving itself has failed, fail silently.
 */
export async function saveFile(contents: Promise<Blob>, kind: SavedKind): Promise<boolean> {
  const { name, extension, mimeType, description } = kind;
  contents.catch(() => {});
  try {
    await fileSave(contents, {
      fileName: name,
      extensions: [extension],
      mimeTypes: [mimeType],
      description,
      id: 'gentlebend-drawing',
    });
    return true;
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') return false;
    throw error;
  }
}
