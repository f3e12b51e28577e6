import type { RouteQuestion } from '../advice/route-search/question.ts';
import type { Job } from '../graph/document.ts';
import { speak } from '../words/index.ts';
import type { SearchMessage } from './route-search/client.ts';

/** The search speaks the language that its worker is named after. */
const search = speak(self.name).then(() => import('../advice/route-search/find.ts'));

/** Looks for routes away from the page; whoever asked ends it by ending the worker. */
self.onmessage = async ({ data }: MessageEvent<{ job: Job; question: RouteQuestion }>) => {
  const tell = (message: SearchMessage) => self.postMessage(message);
  try {
    const { findRoutes } = await search;
    const found = await findRoutes(data.job, data.question, {
      onProgress: (examined) => tell({ kind: 'progress', examined }),
    });
    tell({ kind: 'done', search: found });
  } catch (error) {
    tell({ kind: 'failed', message: String((error as Error).message) });
  }
};
