import regular from '@expo-google-fonts/inter/400Regular/Inter_400Regular.ttf?url';
import italic from '@expo-google-fonts/inter/400Regular_Italic/Inter_400Regular_Italic.ttf?url';
import semibold from '@expo-google-fonts/inter/600SemiBold/Inter_600SemiBold.ttf?url';
import type { SheetFonts } from '../../files/job-sheet/pdf/job-sheet-pdf.ts';

/** The letters of a job sheet, which come with the program and are fetched when one is first made. */
export async function sheetFonts(signal: AbortSignal): Promise<SheetFonts> {
  const [a, b, c] = await Promise.all([regular, semibold, italic].map((url) => bytesOf(url, signal)));
  if (!a || !b || !c) throw new Error('a job sheet has three fonts');
  return { regular: a, semibold: b, italic: c };
}

/** The upright letters alone. */
export async function regularFont(signal: AbortSignal): Promise<Uint8Array> {
  return await bytesOf(regular, signal);
}

async function bytesOf(url: string, signal: AbortSignal): Promise<Uint8Array> {
  const response = await fetch(url, { signal });
  if (!response.ok) throw new Error(`${response.status} ${response.statusText}`);
  return new Uint8Array(await response.arrayBuffer());
}
