import regular from '@expo-google-fonts/inter/400Regular/Inter_400Regular.ttf?url';
import italic from '@expo-google-fonts/inter/400Regular_Italic/Inter_400Regular_Italic.ttf?url';
import semibold from '@expo-google-fonts/inter/600SemiBold/Inter_600SemiBold.ttf?url';
import type { SheetFonts } from '../../files/job-sheet/pdf/job-sheet-pdf.ts';

/** The letters of a job sheet, which come with the program and are fetched when one is first made. */
export async function sheetFonts(signal: AbortSignal): Promise<SheetFonts> {
  const bytes = async (url: string) => {
    const response = await fetch(url, { signal });
    if (!response.ok) throw new Error(`${response.status} ${response.statusText}`);
    return new Uint8Array(await response.arrayBuffer());
  };
  const [a, b, c] = await Promise.all([bytes(regular), bytes(semibold), bytes(italic)]);
  return { regular: a, semibold: b, italic: c };
}
