import { createContext, useContext, useSyncExternalStore } from 'react';
import type { BoardState } from '../canvas/board.ts';
import { currentStyle, onStyle } from '../units/index.ts';
import type { Advisor, AdvisorState } from './advisor.ts';
import type { App } from './commands.ts';
import type { FileDeskState } from './file-desk.ts';
import type { JobsState } from './jobs/desk.ts';
import type { UiState } from './ui.ts';
import type { UnderlayDeskState } from './underlay/desk.ts';

/** The running program, handed down once. */
export const AppContext = createContext<App | null>(null);

export function useApp(): App {
  const app = useContext(AppContext);
  if (!app) throw new Error('the panels stand inside the program');
  // Whatever stands here may show figures, and is shown anew when they are written otherwise.
  useSyncExternalStore(onStyle, currentStyle);
  return app;
}

interface Observable<T> {
  getState(): T;
  subscribe(listener: () => void): () => void;
}

/** `select` must return the same object while nothing that it looks at has changed. */
function useSelected<T, S>(source: Observable<T>, select: (state: T) => S): S {
  const read = () => select(source.getState());
  return useSyncExternalStore(source.subscribe, read);
}

export function useBoard<S>(select: (state: BoardState) => S): S {
  return useSelected(useApp().board, select);
}

export function useUi<S>(select: (state: UiState) => S): S {
  return useSelected(useApp().ui, select);
}

export function useFiles<S>(select: (state: FileDeskState) => S): S {
  return useSelected(useApp().files, select);
}

export function useJobs<S>(select: (state: JobsState) => S): S {
  return useSelected(useApp().jobs, select);
}

export function useUnderlays(): UnderlayDeskState {
  return useSelected(useApp().underlays, (state) => state);
}

export function useAdvice(): AdvisorState {
  const advisor: Advisor = useApp().advisor;
  return useSyncExternalStore(advisor.subscribe, advisor.getState);
}
