import { diagnose } from '../advice/faults/diagnose.ts';
import type { Measurement } from '../advice/faults/types.ts';
import type { Job } from '../graph/document.ts';

/** Looks for a fault away from the page, which stays free to draw. */
self.onmessage = ({
  data,
}: MessageEvent<{ job: Job; schemeId: string; measured: readonly Measurement[] }>) => {
  try {
    self.postMessage({ kind: 'done', diagnosis: diagnose(data.job, data.schemeId, data.measured) });
  } catch (error) {
    self.postMessage({ kind: 'failed', message: String((error as Error).message) });
  }
};
