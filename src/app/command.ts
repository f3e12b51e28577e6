import type { BoardState, Recipe } from '../canvas/board.ts';
import { type Action, shortcuts as toolKeys } from '../canvas/tools/keys.ts';
import type { Advisor } from './advisor.ts';
import type { FileDesk } from './file-desk.ts';
import type { JobsDesk } from './jobs/desk.ts';
import type { SheetsView } from './sheets-view.ts';
import type { Shortcut } from './shortcut.ts';
import type { AppStore } from './store.ts';
import type { Ui } from './ui.ts';
import type { UnderlayDesk } from './underlay/desk.ts';

/** What a command may act on. */
export interface App {
  readonly board: AppStore;
  readonly ui: Ui;
  readonly files: FileDesk;
  readonly jobs: JobsDesk;
  readonly advisor: Advisor;
  readonly sheets: SheetsView;
  readonly underlays: UnderlayDesk;
  /** Says a sentence to a screen reader. */
  readonly say: (text: string) => void;
}

export type CommandGroup = 'edit' | 'file' | 'tool' | 'scheme' | 'view';

/** One thing that a person can ask for. Toolbar, menus, shortcuts and the command box all read this. */
export interface Command {
  readonly id: string;
  readonly group: CommandGroup;
  /** What it does, in the words of the moment: "Undo move turn". */
  title(state: BoardState): string;
  readonly shortcuts: readonly Shortcut[];
  /** Other words that people search by. */
  readonly also?: string;
  enabled(state: BoardState): boolean;
  /** For a command that stands for a state: whether it holds. */
  checked?(state: BoardState): boolean;
  /** Its keys are the browser's own, which raises an event for them: they are listed, and left alone. */
  readonly byBrowser?: true;
  run(app: App): void;
}

const always = () => true;

/** A command with what most have left out. */
export function command(
  id: string,
  group: CommandGroup,
  title: string | ((state: BoardState) => string),
  run: (app: App) => void,
  more: Partial<Pick<Command, 'shortcuts' | 'also' | 'enabled' | 'checked' | 'byBrowser'>> = {},
): Command {
  return {
    id,
    group,
    title: typeof title === 'string' ? () => title : title,
    shortcuts: [],
    enabled: always,
    run,
    ...more,
  };
}

/** Where the tools have a key for the same thing, it is the one that is printed. */
export function keysOf(action: Action): readonly Shortcut[] {
  return toolKeys.find((row) => row.action === action)?.keys ?? [];
}

/** A command's work that is one edit of the document. */
export const edit = (label: string, recipe: (state: BoardState) => Recipe) => (app: App) =>
  app.board.dispatch(label, recipe(app.board.getState()));
