import type { Paper } from '../../files/job-sheet/pdf/job-sheet-pdf.ts';
import type { SectionId } from '../../files/job-sheet/types.ts';
import { stemFor } from '../../files/open-save.ts';
import type { SavedKind } from '../../files/save-file.ts';
import type { Job } from '../../graph/document.ts';
import { words } from '../../words/index.ts';
import type { Progress } from '../saving/progress.ts';
import { sheetFonts } from './fonts.ts';

/** What a person wishes to have on paper. */
export interface SheetWishes {
  readonly paper: Paper;
  /** Scheme ids. */
  readonly schemes: readonly string[];
  readonly parts: readonly SectionId[];
  /** `2026-03-02` */
  readonly date: string;
}

/** Everything that a job sheet can have, in the order of print. */
export const allParts: readonly SectionId[] = [
  'summary',
  'results',
  'drawings',
  'route',
  'charts',
  'findings',
  'parts',
  'signatures',
  'appendix',
];

/** Cautions and the findings stay with every sheet: the figures are not to go anywhere without them. */
export const fixedParts: readonly SectionId[] = ['summary', 'findings'];

export function kindOfSheet(job: Job): SavedKind {
  return {
    name: `${stemFor(job.title)}-job-sheet.pdf`,
    extension: '.pdf',
    mimeType: 'application/pdf',
    description: words.paper.dialog.fileKind,
  };
}

/** Makes the file; rejects with an `AbortError` when it is called off. Its code and letters come when first asked for. */
export async function sheetFile(job: Job, wishes: SheetWishes, progress: Progress): Promise<Blob> {
  const { signal, onShare } = progress;
  const [{ jobSheetOf }, { jobSheetPdf }, fonts] = await Promise.all([
    import('../../files/job-sheet/content.ts'),
    import('../../files/job-sheet/pdf/job-sheet-pdf.ts'),
    sheetFonts(signal),
  ]);
  const date = dayOf(wishes.date);
  const sheets = [];
  for (const { id } of job.schemes) {
    if (wishes.schemes.includes(id)) sheets.push(await jobSheetOf(job, id, { date, signal }));
  }
  const { paper, parts } = wishes;
  const bytes = await jobSheetPdf(job, sheets, { paper, parts, fonts, signal, onProgress: onShare });
  return new Blob([new Uint8Array(bytes)], { type: 'application/pdf' });
}

/** Noon of a day, so that it stays that day in every place's dates. */
function dayOf(text: string): Date {
  const date = new Date(`${text}T12:00:00`);
  return Number.isNaN(date.getTime()) ? new Date() : date;
}

/** A day as the field of a date reads it. */
export function fieldOf(date: Date): string {
  const two = (value: number) => String(value).padStart(2, '0');
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}
