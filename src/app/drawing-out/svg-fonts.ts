import cyrillicExt from '@fontsource-variable/inter/files/inter-cyrillic-ext-wght-normal.woff2?url';
import cyrillic from '@fontsource-variable/inter/files/inter-cyrillic-wght-normal.woff2?url';
import greekExt from '@fontsource-variable/inter/files/inter-greek-ext-wght-normal.woff2?url';
import greek from '@fontsource-variable/inter/files/inter-greek-wght-normal.woff2?url';
import latinExt from '@fontsource-variable/inter/files/inter-latin-ext-wght-normal.woff2?url';
import latin from '@fontsource-variable/inter/files/inter-latin-wght-normal.woff2?url';
import vietnamese from '@fontsource-variable/inter/files/inter-vietnamese-wght-normal.woff2?url';
import ranges from '@fontsource-variable/inter/unicode.json';
import { type FontPart, partsFor } from '../../files/drawing-out/svg-font.ts';
import { dataUrl } from '../../files/underlay/picture.ts';

type Part = keyof typeof ranges;

const urls: Readonly<Record<Part, string>> = {
  latin,
  'latin-ext': latinExt,
  greek,
  'greek-ext': greekExt,
  cyrillic,
  'cyrillic-ext': cyrillicExt,
  vietnamese,
};

/** Latin first: most letters are there. */
const ordered = Object.fromEntries((Object.keys(urls) as Part[]).map((part) => [part, ranges[part]]));

/** The parts of the drawing's font that a text needs, which come with the program. */
export async function fontParts(text: string, signal: AbortSignal): Promise<readonly FontPart[]> {
  return await Promise.all(
    (partsFor(ordered, text) as Part[]).map(async (part) => ({
      range: ranges[part],
      url: await inside(urls[part], signal),
    })),
  );
}

/** A file as an address that needs no fetching. */
async function inside(url: string, signal: AbortSignal): Promise<string> {
  const response = await fetch(url, { signal });
  if (!response.ok) throw new Error(`${response.status} ${response.statusText}`);
  return dataUrl(new Uint8Array(await response.arrayBuffer()), 'font/woff2');
}
