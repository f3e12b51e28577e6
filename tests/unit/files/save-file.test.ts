import { fileSave } from 'browser-fs-access';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { saveFile } from '../../../src/files/save-file.ts';

vi.mock('browser-fs-access', () => ({ fileSave: vi.fn() }));

const kind = { name: 'a.pdf', extension: '.pdf', mimeType: 'application/pdf', description: 'PDF' };
const unheard: unknown[] = [];
const hear = (reason: unknown) => unheard.push(reason);

function failingLater(): { readonly contents: Promise<Blob>; readonly fail: () => void } {
  let fail = () => {};
  const contents = new Promise<Blob>((_, reject) => {
    fail = () => reject(new Error('called off'));
  });
  return { contents, fail: () => fail() };
}

/** Long enough for the process to miss whoever should have caught a rejection. */
const later = () => new Promise((done) => setTimeout(done, 5));

describe('saving a file that is still being made', () => {
  beforeEach(() => {
    unheard.length = 0;
    process.on('unhandledRejection', hear);
  });
  afterEach(() => {
    process.off('unhandledRejection', hear);
  });

  it('tells why the contents could not be made', async () => {
    vi.mocked(fileSave).mockImplementation(async (contents) => {
      await contents;
      return null;
    });
    await expect(saveFile(Promise.reject(new Error('no letters')), kind)).rejects.toThrow('no letters');
  });

  it('leaves no failure of the contents unheard where no place could be asked for', async () => {
    vi.mocked(fileSave).mockRejectedValue(new Error('not allowed here'));
    const { contents, fail } = failingLater();
    await expect(saveFile(contents, kind)).rejects.toThrow('not allowed here');
    fail();
    await later();
    expect(unheard).toEqual([]);
  });

  it('leaves no failure of the contents unheard after a change of mind', async () => {
    vi.mocked(fileSave).mockRejectedValue(new DOMException('no', 'AbortError'));
    const { contents, fail } = failingLater();
    expect(await saveFile(contents, kind)).toBe(false);
    fail();
    await later();
    expect(unheard).toEqual([]);
  });
});
