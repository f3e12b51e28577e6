import { findRoutes } from '../advice/route-search/find.ts';
import type { RouteQuestion } from '../advice/route-search/question.ts';
import type { Job } from '../graph/document.ts';
import type { SearchMessage } from './route-search/client.ts';

/** Looks for routes away from the page; whoever asked ends it by ending the worker. */
self.onmessage = async ({ data }: MessageEvent<{ job: Job; question: RouteQuestion }>) => {
  const tell = (message: SearchMessage) => self.postMessage(message);
  try {
    const search = await findRoutes(data.job, data.question, {
      onProgress: (examined) => tell({ kind: 'progress', examined }),
    });
    tell({ kind: 'done', search });
  } catch (error) {
    tell({ kind: 'failed', message: String((error as Error).message) });
  }
};
