import { createStore, type StoreApi } from 'zustand/vanilla';

export type PanelTab = 'proposals' | 'pressure' | 'selected' | 'findings' | 'kitchen';

/** A sentence that needs an answer before work goes on, with the places that it is about. */
export interface Notice {
  readonly title: string;
  readonly text: string;
  readonly details: readonly { readonly path: string; readonly message: string }[];
  /** What else may be done than leave things as they are. */
  readonly confirm?: { readonly label: string; readonly run: () => void };
}

/** What the panels show that is not part of the board: open tab, open box, a notice. */
export interface UiState {
  readonly panel: PanelTab;
  readonly commandBox: boolean;
  /** The scheme whose name is being typed. */
  readonly renaming: string | null;
  readonly notice: Notice | null;
}

export type Ui = StoreApi<UiState>;

export function createUi(): Ui {
  return createStore<UiState>(() => ({
    panel: 'proposals',
    commandBox: false,
    renaming: null,
    notice: null,
  }));
}
