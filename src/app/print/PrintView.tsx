import { useEffect, useState } from 'react';
import { Button, Heading } from 'react-aria-components';
import { jobSheetOf } from '../../files/job-sheet/content.ts';
import type { JobSheet } from '../../files/job-sheet/types.ts';
import { words } from '../../words/index.ts';
import { useApp, useBoard, useUi } from '../context.ts';
import { FullView } from '../FullView.tsx';
import { JobSheetPaper } from './JobSheetPaper.tsx';
import './print.css';

const says = words.jobSheet.print;

/** The job sheet of the scheme on the desk as it is printed, over the whole window. */
export default function PrintView() {
  const { ui } = useApp();
  const open = useUi((state) => state.printing !== null);
  const close = () => ui.setState({ printing: null });
  return (
    <FullView name="print" label={says.heading} isOpen={open} onClose={close}>
      <View close={close} />
    </FullView>
  );
}

function View({ close }: { close: () => void }) {
  const sheet = useSheet();
  useAtOnce(sheet);
  return (
    <>
      <header className="print-bar">
        <Heading slot="title">{says.heading}</Heading>
        <p>{says.hint}</p>
        <span className="print-buttons">
          <Button className="button" autoFocus onPress={close}>
            {says.back}
          </Button>
          <Button className="button primary" isDisabled={!sheet} onPress={() => window.print()}>
            {says.print}
          </Button>
        </span>
      </header>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls is reached by keys */}
      <section className="print-desk" aria-label={says.sheet} aria-busy={!sheet} tabIndex={0}>
        {sheet ? <JobSheetPaper sheet={sheet} /> : <p className="print-making">{says.making}</p>}
      </section>
    </>
  );
}

/** The sheet of what is on the desk, as of the moment that the view was opened. */
function useSheet(): JobSheet | null {
  const job = useBoard((state) => state.job);
  const schemeId = useBoard((state) => state.schemeId);
  const [sheet, setSheet] = useState<JobSheet | null>(null);
  useEffect(() => {
    const control = new AbortController();
    const { signal } = control;
    void jobSheetOf(job, schemeId, { date: new Date(), signal }).then(setSheet, (error: unknown) => {
      if (!signal.aborted) throw error;
    });
    return () => control.abort();
  }, [job, schemeId]);
  return sheet;
}

/** Prints as soon as the sheet and its letters are there, where the view was opened for that. */
function useAtOnce(sheet: JobSheet | null): void {
  const { ui } = useApp();
  const atOnce = useUi((state) => state.printing === 'at once');
  useEffect(() => {
    if (!sheet || !atOnce) return;
    ui.setState({ printing: 'shown' });
    void document.fonts.ready.then(() => requestAnimationFrame(() => window.print()));
  }, [sheet, atOnce, ui]);
}
