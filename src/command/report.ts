import { basename, join, resolve } from 'node:path';
import { jobSheetOf } from '../files/job-sheet/content.ts';
import type { Paper } from '../files/job-sheet/pdf/job-sheet-pdf.ts';
import type { JobSheet } from '../files/job-sheet/types.ts';
import { stemFor } from '../files/open-save.ts';
import type { Job } from '../graph/document.ts';
import { plainStyle, type Style } from '../units/index.ts';
import { words } from '../words/index.ts';
import { jobCommand, type Work } from './command.ts';
import { sheetText } from './sheet-text.ts';

const told = words.jobSheet.command;

/** Files that a run of the command line has written already, so that none is written over by the next. */
const writtenBy = new WeakMap<Work, Set<string>>();

/** The job sheet of each scheme: as one PDF a job, or as text; its data with `--json`. */
export const report = jobCommand(
  'report',
  told.help,
  {
    out: { type: 'string', name: told.out },
    paper: { type: 'string', choices: ['a4', 'letter'] },
    date: { type: 'string', name: told.dateName },
    text: { type: 'boolean' },
  },
  async ({ file, job, schemes, values, style, work }) => {
    const date = dayOf(values.date);
    if (!date) return { ok: false, problems: [{ path: '', message: told.noDate(values.date ?? '') }] };
    const sheetsIn = async (written: Style) => {
      const made: JobSheet[] = [];
      for (const { id, name } of schemes) {
        await work.step(words.command.doing.solving(name));
        made.push(await jobSheetOf(job, id, { date, style: written }));
      }
      return made;
    };
    const sheets = await sheetsIn(style);
    const plain = style === plainStyle ? sheets : await sheetsIn(plainStyle);
    if (values.text) return { ok: true, text: sheets.map(sheetText).join('\n'), json: { sheets: plain } };

    const paper: Paper = values.paper ?? (job.units === 'imperial' ? 'letter' : 'a4');
    const name = nameFor(file, job, values.out);
    const written = writtenBy.get(work) ?? new Set();
    writtenBy.set(work, written);
    if (written.has(resolve(name))) return { ok: false, problems: [{ path: '', message: told.twice(name) }] };
    written.add(resolve(name));
    const { pdf, lacking } = await pdfOf(job, sheets, { paper, style }, work);
    const path = await work.write(name, pdf);
    const lines = [told.written(path, schemes.length)];
    if (lacking.length > 0) lines.push(words.paper.letters.told(lacking.length, lacking.join(' ')));
    return {
      ok: true,
      text: `${lines.join('\n')}\n`,
      json: { paper, pdf: path, lettersNotPrinted: lacking, sheets: plain },
    };
  },
);

async function pdfOf(
  job: Job,
  sheets: readonly JobSheet[],
  options: { readonly paper: Paper; readonly style: Style },
  work: Work,
): Promise<{ pdf: Uint8Array; lacking: readonly string[] }> {
  await work.step(told.drawing);
  const [{ jobSheetPdf }, { lackingLetters }, { readFont }, { sheetFonts }] = await Promise.all([
    import('../files/job-sheet/pdf/job-sheet-pdf.ts'),
    import('../files/job-sheet/pdf/lacking.ts'),
    import('../files/pdf/font-file.ts'),
    import('./sheet-fonts.ts'),
  ]);
  const fonts = await sheetFonts();
  return {
    pdf: await jobSheetPdf(job, sheets, { ...options, fonts }),
    lacking: lackingLetters(readFont(fonts.regular), job, sheets),
  };
}

/** Noon of the day that is asked for, so that it is that day everywhere; now where none is. Null for what is no day. */
function dayOf(text: string | undefined): Date | null {
  if (text === undefined) return new Date();
  const date = /^\d{4}-\d{2}-\d{2}$/.test(text) ? new Date(`${text}T12:00:00`) : new Date(Number.NaN);
  return Number.isNaN(date.getTime()) ? null : date;
}

/** Beside nothing else: in the folder asked for or the one worked in, by the name of the job's file. */
function nameFor(file: string, job: Job, out: string | undefined): string {
  if (out?.toLowerCase().endsWith('.pdf')) return out;
  const stem = file === '-' ? stemFor(job.title) : basename(file).replace(/(\.gentlebend)?\.json$/i, '');
  return join(out ?? '.', `${stem}-job-sheet.pdf`);
}
