import { useEffect, useRef, useState } from 'react';
import type { Diagnosis } from '../../advice/faults/diagnose.ts';
import type { Measurement } from '../../advice/faults/types.ts';
import type { Job } from '../../graph/document.ts';
import { language, words } from '../../words/index.ts';
import { useApp } from '../context.ts';
import { figuresInUse } from '../settings/figures.ts';

export type Run =
  | { readonly state: 'idle' | 'running' }
  | { readonly state: 'failed'; readonly message: string }
  | {
      readonly state: 'done';
      readonly job: Job;
      readonly schemeId: string;
      readonly measured: readonly Measurement[];
      readonly diagnosis: Diagnosis;
    };

type Message =
  | { readonly kind: 'done'; readonly diagnosis: Diagnosis | { readonly reason: string } }
  | { readonly kind: 'failed'; readonly message: string };

export type Done = Extract<Run, { state: 'done' }>;

/** One diagnosis at a time, in a worker that ends with it. */
export function useDiagnosis() {
  const { board, say } = useApp();
  const [run, setRun] = useState<Run>({ state: 'idle' });
  const worker = useRef<Worker | null>(null);
  useEffect(() => () => worker.current?.terminate(), []);

  const start = (measured: readonly Measurement[]) => {
    worker.current?.terminate();
    const { job, schemeId } = board.getState();
    const own = new Worker(new URL('../faults.worker.ts', import.meta.url), {
      type: 'module',
      name: language,
    });
    worker.current = own;
    setRun({ state: 'running' });
    const end = (next: Run, words: string) => {
      own.terminate();
      setRun(next);
      say(words);
    };
    own.onmessage = ({ data }: MessageEvent<Message>) => {
      if (data.kind === 'failed') end({ state: 'failed', message: data.message }, data.message);
      else if ('reason' in data.diagnosis)
        end({ state: 'failed', message: data.diagnosis.reason }, data.diagnosis.reason);
      else
        end({ state: 'done', job, schemeId, measured, diagnosis: data.diagnosis }, words.faults.panel.ranked);
    };
    own.onerror = (event) => end({ state: 'failed', message: event.message }, event.message);
    own.postMessage({ job: { ...job, underlays: [] }, schemeId, measured, figures: figuresInUse() });
  };
  return { run, start };
}
