import { fileOpen } from 'browser-fs-access';
import { words } from '../../words/index.ts';

const says = words.underlayFiles.choose;

const kind = {
  description: says.kinds,
  extensions: ['.png', '.jpg', '.jpeg', '.svg', '.pdf', '.dxf'],
  mimeTypes: ['image/png', 'image/jpeg', 'image/svg+xml', 'application/pdf', 'image/vnd.dxf'],
  id: 'gentlebend-underlay',
};

/** Lets the person choose a file to lay under a sheet; `null` when they change their mind. */
export async function choosePicture(): Promise<File | null> {
  try {
    return await fileOpen(kind);
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') return null;
    throw error;
  }
}
