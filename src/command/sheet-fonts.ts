import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { SheetFonts } from '../files/job-sheet/pdf/job-sheet-pdf.ts';

const { resolve } = createRequire(import.meta.url);

/** The letters of a job sheet, from the package that they come in. */
export async function sheetFonts(): Promise<SheetFonts> {
  const [regular, semibold, italic] = await Promise.all(
    ['400Regular', '600SemiBold', '400Regular_Italic'].map((cut) =>
      readFile(resolve(`@expo-google-fonts/inter/${cut}/Inter_${cut}.ttf`)),
    ),
  );
  if (!regular || !semibold || !italic) throw new Error('the package has three fonts');
  return { regular, semibold, italic };
}
