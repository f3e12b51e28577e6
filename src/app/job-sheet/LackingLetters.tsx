import { useEffect, useMemo, useState } from 'react';
import { textsIn } from '../../files/job-sheet/pdf/lacking.ts';
import { words } from '../../words/index.ts';
import { useBoard } from '../context.ts';
import { regularFont } from './fonts.ts';

/** Letters that the sheet’s font is sure to have: Latin, and the usual signs. */
const usual = /^[\s -\u024f\u2010-\u2027\u2030-\u2044]*$/u;

/** Which letters of the job the sheet cannot show. Its font is looked at only where the job has any unusual one. */
export function LackingLetters() {
  const job = useBoard((state) => state.job);
  const text = useMemo(() => [...textsIn(job)].join(' '), [job]);
  const [lacking, setLacking] = useState<readonly string[]>([]);
  useEffect(() => {
    setLacking([]);
    if (usual.test(text)) return;
    const control = new AbortController();
    void lackingOf(text, control.signal).then(setLacking, () => {
      // The saving itself says it where letters cannot be had.
    });
    return () => control.abort();
  }, [text]);
  if (lacking.length === 0) return null;
  return (
    <p className="sheet-note" role="status">
      {words.paper.letters.inDialog(lacking.length, lacking.join(' '))}
    </p>
  );
}

async function lackingOf(text: string, signal: AbortSignal): Promise<readonly string[]> {
  const [{ readFont }, { lackingIn }, bytes] = await Promise.all([
    import('../../files/pdf/font-file.ts'),
    import('../../files/pdf/letters.ts'),
    regularFont(signal),
  ]);
  return lackingIn(readFont(bytes), text);
}
