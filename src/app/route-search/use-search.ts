import { useEffect, useRef, useState } from 'react';
import type { RouteSearch } from '../../advice/route-search/find.ts';
import type { RouteQuestion } from '../../advice/route-search/question.ts';
import type { Job } from '../../graph/document.ts';
import { words } from '../../words/index.ts';
import { useApp } from '../context.ts';
import { searchInWorker } from './client.ts';

const says = words.routeSearch.panel;

export type Run =
  | { readonly state: 'idle' }
  | { readonly state: 'running'; readonly examined: number }
  | { readonly state: 'cancelled'; readonly examined: number }
  | { readonly state: 'failed'; readonly message: string }
  | {
      readonly state: 'done';
      readonly number: number;
      readonly job: Job;
      readonly question: RouteQuestion;
      readonly search: RouteSearch;
    };

/** One search at a time; it is called off by hand, and when the panel goes. */
export function useSearch() {
  const { board, say } = useApp();
  const [run, setRun] = useState<Run>({ state: 'idle' });
  const count = useRef(0);
  const current = useRef<AbortController | null>(null);
  useEffect(() => () => current.current?.abort(), []);

  const start = (question: RouteQuestion) => {
    current.current?.abort();
    const control = new AbortController();
    current.current = control;
    count.current += 1;
    setRun({ state: 'running', examined: 0 });
    const show = (next: Run) => {
      if (current.current === control && !control.signal.aborted) setRun(next);
    };
    const { job } = board.getState();
    searchInWorker(job, question, {
      signal: control.signal,
      onProgress: (examined) => show({ state: 'running', examined }),
    }).then(
      (search) => {
        show({ state: 'done', number: count.current, job, question, search });
        if (!control.signal.aborted)
          say(search.reason ?? says.found(words.counts.routes(search.routes.length)));
      },
      (error: unknown) => show({ state: 'failed', message: String((error as Error).message) }),
    );
  };
  const cancel = () => {
    current.current?.abort();
    setRun((now) => (now.state === 'running' ? { state: 'cancelled', examined: now.examined } : now));
    say(says.saidCalledOff);
  };
  return { run, start, cancel };
}
