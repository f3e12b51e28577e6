import type { PdfFont } from './font.ts';
import { POINT } from './font.ts';
import { createObjects, dateString, type Ref, textString } from './objects.ts';
import { opacityName, type Page } from './page.ts';

/** What readers of the file show beside its pages. */
export interface PdfAbout {
  readonly title: string;
  readonly subject: string;
  readonly creator: string;
  /** BCP 47: `en`. */
  readonly language: string;
  readonly date: Date;
  /** 32 hexadecimal digits that name the file. */
  readonly id: string;
}

/** An entry of the list of contents, and what stands under it. */
export interface Bookmark {
  readonly title: string;
  /** Index of its page. */
  readonly page: number;
  readonly under?: readonly Bookmark[];
}

/**
 * The bytes of a PDF file. The same pages, fonts, contents and `about` give the same bytes. `pause` is waited for
 * after each page, so that others may have their turn.
 */
export async function pdfFile(
  pages: readonly Page[],
  fonts: readonly PdfFont[],
  bookmarks: readonly Bookmark[],
  about: PdfAbout,
  pause: () => Promise<void> = () => Promise.resolve(),
): Promise<Uint8Array> {
  const objects = createObjects();
  const root = objects.reserve();
  const tree = objects.reserve();
  const contents: Ref[] = [];
  for (const page of pages) {
    contents.push(objects.addStream(page.content()));
    await pause();
  }
  const named = fonts.flatMap((font) => {
    const ref = font.embed(objects);
    return ref === null ? [] : [`/${font.name} ${ref} 0 R`];
  });
  const opacities = [...new Set(pages.flatMap((page) => [...page.opacities()]))]
    .sort((a, b) => a - b)
    .map((value) => `/${opacityName(value)} << /ca ${value / 100} /CA ${value / 100} >>`);
  const resources = objects.add(
    `<< /Font << ${named.join(' ')} >> /ExtGState << ${opacities.join(' ')} >> >>`,
  );
  const kids = pages.map(({ width, height }, i) =>
    objects.add(
      `<< /Type /Page /Parent ${tree} 0 R /MediaBox [0 0 ${points(width)} ${points(height)}] ` +
        `/Resources ${resources} 0 R /Contents ${contents[i]} 0 R >>`,
    ),
  );
  objects.set(
    tree,
    `<< /Type /Pages /Kids [${kids.map((kid) => `${kid} 0 R`).join(' ')}] /Count ${kids.length} >>`,
  );

  const outlines = objects.reserve();
  const { first, last, count } = outline(bookmarks, outlines);
  objects.set(outlines, `<< /Type /Outlines ${ends(first, last)}/Count ${count} >>`);
  objects.set(
    root,
    `<< /Type /Catalog /Pages ${tree} 0 R /Outlines ${outlines} 0 R /Lang (${about.language}) ` +
      '/ViewerPreferences << /DisplayDocTitle true >> >>',
  );
  const date = dateString(about.date);
  const info = objects.add(
    `<< /Title ${textString(about.title)} /Subject ${textString(about.subject)} ` +
      `/Creator ${textString(about.creator)} /CreationDate ${date} /ModDate ${date} >>`,
  );
  return objects.file(root, info, about.id);

  /** Adds entries that stand side by side; how many can be seen when all are open. */
  function outline(entries: readonly Bookmark[], parent: Ref): { first: Ref; last: Ref; count: number } {
    const refs = entries.map(() => objects.reserve());
    let count = 0;
    entries.forEach(({ title, page, under = [] }, i) => {
      const ref = refs[i] ?? 0;
      const inner = outline(under, ref);
      const beside = `${i > 0 ? `/Prev ${refs[i - 1]} 0 R ` : ''}${refs[i + 1] ? `/Next ${refs[i + 1]} 0 R ` : ''}`;
      const inside = inner.count > 0 ? `${ends(inner.first, inner.last)}/Count ${inner.count} ` : '';
      objects.set(
        ref,
        `<< /Title ${textString(title)} /Parent ${parent} 0 R ${beside}${inside}/Dest [${kids[page]} 0 R /Fit] >>`,
      );
      count += 1 + inner.count;
    });
    return { first: refs[0] ?? 0, last: refs.at(-1) ?? 0, count };
  }
}

function ends(first: Ref, last: Ref): string {
  return first > 0 ? `/First ${first} 0 R /Last ${last} 0 R ` : '';
}

function points(mm: number): number {
  return Math.round((mm / POINT) * 1e3) / 1e3;
}
