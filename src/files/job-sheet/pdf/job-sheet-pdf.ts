import type { Job } from '../../../graph/document.ts';
import { solveScheme } from '../../../graph/solve.ts';
import { currentStyle, inStyle, type Style } from '../../../units/index.ts';
import { language, words } from '../../../words/index.ts';
import { type Bookmark, pdfFile } from '../../pdf/document.ts';
import { createFont } from '../../pdf/font.ts';
import { readFont } from '../../pdf/font-file.ts';
import { createPage, type Page } from '../../pdf/page.ts';
import { breath, inSteps } from '../in-steps.ts';
import type { DrawingBlock, JobSheet, SectionId, SheetSection } from '../types.ts';
import { blockPieces, sectionPiece } from './blocks.ts';
import { drawDrawingPage } from './drawing-page.ts';
import { type Drawn, drawnOf } from './drawn.ts';
import { createFlow, type Flow, type Piece } from './flow.ts';
import { lackingLetters } from './lacking.ts';
import type { Type } from './look.ts';
import { openingPiece } from './opening.ts';
import { drawTitleBlock, inside, type PageTitle } from './title-block.ts';

export type Paper = 'a4' | 'letter';

/** Upright sheets, mm: ISO 216 and ANSI/ASME Y14.1. */
export const papers: Readonly<Record<Paper, { readonly width: number; readonly height: number }>> = {
  a4: { width: 210, height: 297 },
  letter: { width: 215.9, height: 279.4 },
};

/** TrueType files of the sheet's letters: upright, bold and slanted. */
export interface SheetFonts {
  readonly regular: Uint8Array;
  readonly semibold: Uint8Array;
  readonly italic: Uint8Array;
}

export interface PdfOptions {
  readonly paper: Paper;
  readonly fonts: SheetFonts;
  /** Sections to leave in; all where absent. */
  readonly parts?: readonly SectionId[];
  /** How figures are written; as on the desk where absent. */
  readonly style?: Style;
  /** Told after each drawing and each piece of text, 0-1. */
  readonly onProgress?: (done: number) => void;
  /** Ends the work with its reason. */
  readonly signal?: AbortSignal;
}

/** Free space between the frame and running text, mm. */
const padding = 6;

/** A section that has a page of its own goes on a page that is taken less than this, so that none stays nearly empty. */
const roomToGoOn = 0.35;

interface Sheet {
  readonly page: Page;
  readonly about: PageTitle;
}

/**
 * A job sheet as a PDF file: one or several schemes of a job one after another. Vectors and text throughout, with
 * the letters that are used embedded. The same sheets of the same job give the same bytes.
 *
 * @param sheets of this job, from `jobSheetOf`
 * @throws RangeError where a sheet's scheme is not in the job; the signal's reason once it is aborted
 */
export async function jobSheetPdf(
  job: Job,
  sheets: readonly JobSheet[],
  options: PdfOptions,
): Promise<Uint8Array> {
  const fonts = [options.fonts.regular, options.fonts.semibold, options.fonts.italic].map((bytes, i) =>
    createFont(`F${i + 1}`, readFont(bytes)),
  );
  const [regular, semibold, italic] = fonts;
  if (!regular || !semibold || !italic) throw new Error('a job sheet has three fonts');
  const type: Type = { regular, semibold, italic };
  const style = options.style ?? currentStyle();
  const size = papers[options.paper];
  const lacking = lackingLetters(regular.file, job, sheets);
  const made: Sheet[] = [];
  const bookmarks: Bookmark[] = [];
  const wanted = sheets.map((sheet) =>
    sheet.sections.filter(({ id }) => !options.parts || options.parts.includes(id)),
  );
  const all = wanted.flat().reduce((sum, { blocks }) => sum + blocks.length, 0);
  let done = 0;
  const pause = async () => {
    await breath();
    options.signal?.throwIfAborted();
  };
  const step = async (blocks: number) => {
    done += blocks;
    options.onProgress?.(done / Math.max(1, all));
    await pause();
  };

  for (const [i, sheet] of sheets.entries()) {
    const drawn = drawnOf(job, solveScheme(job, sheet.title.schemeId));
    const writer = createWriter(sheet, drawn, size, type, made, lacking);
    const first = made.length;
    const sections = wanted[i] ?? [];
    if (sections.some(({ id }) => id !== 'drawings')) inStyle(style, () => writer.opening());
    const under: Bookmark[] = [];
    for (const section of sections) {
      under.push({ title: section.title, page: await inSteps(style, writer.section(section), step) });
    }
    bookmarks.push({ title: sheet.title.scheme, page: first, under });
  }
  inStyle(style, () => {
    for (const [i, { page, about }] of made.entries()) drawTitleBlock(page, about, i + 1, made.length, type);
  });
  const [first] = sheets;
  return await pdfFile(
    made.map(({ page }) => page),
    fonts,
    sheets.length > 1 ? bookmarks : (bookmarks[0]?.under ?? []),
    {
      title: `${first?.title.job ?? ''}: ${sheets.map(({ title }) => title.scheme).join(', ')}`,
      subject: first?.title.heading ?? '',
      creator: words.jobSheet.title.version(first?.title.program ?? '', first?.title.version ?? ''),
      language,
      date: new Date(first?.title.made ?? 0),
      id: idOf(first),
    },
    pause,
  );
}

/** The file's fingerprint names the PDF too, so that its bytes depend on nothing else. */
function idOf(sheet: JobSheet | undefined): string {
  return (sheet?.title.fingerprint.full ?? '0'.repeat(64)).slice(0, 32);
}

/** Puts the sections of one sheet on pages. */
function createWriter(
  { title }: JobSheet,
  drawn: Drawn,
  { width, height }: { readonly width: number; readonly height: number },
  type: Type,
  made: Sheet[],
  lacking: readonly string[],
) {
  let current: string | null = null;
  /** After the drawings, whose pages lie across, the text goes on where it was. */
  let goesOn = false;
  const contents = new Map<Page, string[]>();
  const area = inside({ width, height });
  const column = { x: area.x + padding, y: area.y + padding, height: area.height - 2 * padding };
  const textWidth = area.width - 2 * padding;
  const flow: Flow = createFlow(() => {
    const page = createPage(width, height);
    const content = current === null ? [] : [current];
    contents.set(page, content);
    made.push({ page, about: { title, contents: content, scale: null } });
    return { page, ...column };
  });

  const drawingPage = (block: DrawingBlock) => {
    const page = createPage(height, width);
    const scale = drawDrawingPage(page, block, drawn, type);
    made.push({ page, about: { title, contents: [block.caption], scale } });
  };

  return {
    opening() {
      flow.breakPage();
      flow.add([openingPiece(title, lacking, textWidth, type)]);
    },
    /** Puts a section on pages, and says after each piece of it how many blocks that was; last the index of its first page. */
    *section(section: SheetSection): Generator<number, number, undefined> {
      if (section.id === 'drawings' && section.blocks.some(({ kind }) => kind === 'drawing')) {
        const first = made.length;
        for (const block of section.blocks) {
          if (block.kind === 'drawing') drawingPage(block);
          yield 1;
        }
        goesOn = true;
        return first;
      }
      current = section.title;
      const roomy = flow.taken() < roomToGoOn && section.id !== 'appendix';
      if (section.newPage && !goesOn && !roomy) flow.breakPage();
      goesOn = false;
      let first = made.length;
      const heading = sectionPiece(section.title, textWidth, type);
      let waiting: Piece[] = [
        {
          ...heading,
          draw(page, x, y) {
            first = made.findIndex((sheet) => sheet.page === page);
            const said = contents.get(page);
            if (!said?.includes(section.title)) said?.push(section.title);
            heading.draw(page, x, y);
          },
        },
      ];
      for (const block of section.blocks) {
        waiting.push(...blockPieces(block, drawn, textWidth, type));
        if (!waiting.at(-1)?.keep) {
          flow.add(waiting);
          waiting = [];
        }
        yield 1;
      }
      flow.add(waiting);
      return first;
    },
  };
}
