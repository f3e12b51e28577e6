import { fileOpen } from 'browser-fs-access';

const kind = {
  description: 'Picture, PDF or DXF',
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
