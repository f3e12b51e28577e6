import type { RouteSearch, SearchWatch } from '../../advice/route-search/find.ts';
import type { RouteQuestion } from '../../advice/route-search/question.ts';
import type { Job } from '../../graph/document.ts';
import { language } from '../../words/index.ts';
import { figuresInUse } from '../settings/figures.ts';

/** What the worker says. */
export type SearchMessage =
  | { readonly kind: 'progress'; readonly examined: number }
  | { readonly kind: 'done'; readonly search: RouteSearch }
  | { readonly kind: 'failed'; readonly message: string };

/** Looks for routes in a worker of its own, which ends with the search or when it is called off. */
export function searchInWorker(
  job: Job,
  question: RouteQuestion,
  { signal, onProgress }: SearchWatch,
): Promise<RouteSearch> {
  const worker = new Worker(new URL('../route-search.worker.ts', import.meta.url), {
    type: 'module',
    name: language,
  });
  return new Promise<RouteSearch>((resolve, reject) => {
    signal?.addEventListener('abort', () => reject(signal.reason));
    worker.onmessage = ({ data }: MessageEvent<SearchMessage>) => {
      if (data.kind === 'progress') onProgress?.(data.examined);
      else if (data.kind === 'done') resolve(data.search);
      else reject(new Error(data.message));
    };
    worker.onerror = (event) => reject(new Error(event.message));
    // Pictures under the sheets are no obstacles, and large.
    worker.postMessage({ job: { ...job, underlays: [] }, question, figures: figuresInUse() });
  }).finally(() => worker.terminate());
}
