import type { RouteQuestion } from '../advice/route-search/question.ts';
import type { Job } from '../graph/document.ts';
import type { StyleChoice } from '../units/index.ts';
import { speak } from '../words/index.ts';
import type { SearchMessage } from './route-search/client.ts';

/** The search speaks the language that its worker is named after. */
const ready = speak(self.name).then(() =>
  Promise.all([import('../advice/route-search/find.ts'), import('../units/index.ts')]),
);

/** Looks for routes away from the page; whoever asked ends it by ending the worker. */
self.onmessage = async ({
  data,
}: MessageEvent<{ job: Job; question: RouteQuestion; figures: StyleChoice }>) => {
  const tell = (message: SearchMessage) => self.postMessage(message);
  try {
    const [{ findRoutes }, { setStyle, styleOf }] = await ready;
    setStyle(styleOf(data.figures));
    const found = await findRoutes(data.job, data.question, {
      onProgress: (examined) => tell({ kind: 'progress', examined }),
    });
    tell({ kind: 'done', search: found });
  } catch (error) {
    tell({ kind: 'failed', message: String((error as Error).message) });
  }
};
