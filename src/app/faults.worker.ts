import type { Measurement } from '../advice/faults/types.ts';
import type { Job } from '../graph/document.ts';
import type { StyleChoice } from '../units/index.ts';
import { speak } from '../words/index.ts';

/** The diagnosis speaks the language that its worker is named after. */
const ready = speak(self.name).then(() =>
  Promise.all([import('../advice/faults/diagnose.ts'), import('../units/index.ts')]),
);

/** Looks for a fault away from the page, which stays free to draw. */
self.onmessage = async ({
  data,
}: MessageEvent<{ job: Job; schemeId: string; measured: readonly Measurement[]; figures: StyleChoice }>) => {
  try {
    const [{ diagnose }, { setStyle, styleOf }] = await ready;
    setStyle(styleOf(data.figures));
    self.postMessage({ kind: 'done', diagnosis: diagnose(data.job, data.schemeId, data.measured) });
  } catch (error) {
    self.postMessage({ kind: 'failed', message: String((error as Error).message) });
  }
};
