import { createStore, type StoreApi } from 'zustand/vanilla';
import type { KeptMeasurement } from '../advice/faults/kept.ts';
import type { CsvStyle } from '../files/csv/csv.ts';
import type { Clip } from '../graph/edits/index.ts';
import type { SheetId, SheetPoint } from '../graph/sheet.ts';
import type { Reach } from '../graph/stretch.ts';
import { type Arrangement, keptArrangement } from './arrangement.ts';
import { type Figures, keptFigures } from './settings/figures.ts';

export type PanelTab = 'proposals' | 'pressure' | 'selected' | 'findings' | 'kitchen';

/** A sentence that needs an answer before work goes on, with the places that it is about. */
export interface Notice {
  readonly title: string;
  readonly text: string;
  readonly details: readonly { readonly path: string; readonly message: string }[];
  /** What else may be done than leave things as they are. */
  readonly confirm?: { readonly label: string; readonly run: () => void };
}

/** A menu for what is selected, asked for at a place of the window, px. */
export interface MenuPlace {
  readonly x: number;
  readonly y: number;
  /** Where that is on a sheet. */
  readonly on?: { readonly sheet: SheetId; readonly point: SheetPoint };
}

/** What the panels show that is not part of the board: open tab, open box, a notice. */
export interface UiState {
  readonly panel: PanelTab;
  /** Which views stand on the desk. */
  readonly arrangement: Arrangement;
  /** How figures and dates are written in this browser. */
  readonly figures: Figures;
  readonly commandBox: boolean;
  /** How figures and the page are shown, to be chosen. */
  readonly settings: boolean;
  /** The list of all keys. */
  readonly shortcuts: boolean;
  /** The list of edits. */
  readonly steps: boolean;
  /** The route as a table under the sheets. */
  readonly table: boolean;
  /** The charts with their tables, under the sheets. */
  readonly charts: boolean;
  /** The parts list with its cutting plan, under the sheets. */
  readonly parts: boolean;
  /** How numbers stand in tables for spreadsheets; as the reader writes them where nothing was chosen. */
  readonly csvStyle: CsvStyle | null;
  /** The bend lab over the whole window, with the turn that it was asked for; its own bench where none was. */
  readonly lab: { readonly node: string | null; readonly page?: 'lessons' } | null;
  /** The search for routes, in the place of the side panel. */
  readonly routeSearch: boolean;
  /** The search for what is wrong with a hood, in the place of the side panel. */
  readonly faults: boolean;
  /** What was measured at the hood of each scheme, by scheme id. */
  readonly measured: Readonly<Record<string, readonly KeptMeasurement[]>>;
  /** What the tab of findings shows. */
  readonly findingsView: 'findings' | 'codes';
  /** The rules of the job with their limits. */
  readonly rules: boolean;
  /** The schemes side by side over the whole window. */
  readonly comparing: boolean;
  /** The parts of the scheme with their prices. */
  readonly prices: boolean;
  /** The box that saves a drawing. */
  readonly drawing: boolean;
  /** The job sheet as it is printed, over the whole window; `at once` opens the printer too. */
  readonly printing: 'shown' | 'at once' | null;
  /** The box that makes the job sheet. */
  readonly jobSheet: boolean;
  /** The jobs and templates of this browser over the whole window. */
  readonly jobs: 'jobs' | 'templates' | 'deleted' | null;
  /** The versions of the job on the board. */
  readonly versions: boolean;
  /** The question what a template shall be called. */
  readonly savingTemplate: boolean;
  /** The help over the whole window, at one of its sections or at its beginning. */
  readonly help: { readonly section: string | null } | null;
  /** The step of the guided start, from 0. */
  readonly guide: number | null;
  /** The box with the link that holds the job, or the one that takes such a link. */
  readonly sharing: 'copy' | 'open' | null;
  readonly menu: MenuPlace | null;
  /** The scheme whose name is being typed. */
  readonly renaming: string | null;
  readonly notice: Notice | null;
  /** How far a change of size or material goes from the duct that it is made at. */
  readonly reach: Reach | 'leg';
  /** What was copied here last, for a browser that does not lend its clipboard. */
  readonly clip: Clip | null;
  /** A new version of the program: one that waits to be taken, or one that another tab has taken. */
  readonly update: { readonly from: 'waiting' | 'elsewhere'; readonly take: () => void } | null;
  /** Whether this browser holds the program, so that it opens without a network. */
  readonly keptOffline: boolean;
  /** What the live region says; `turn` tells the same words said again. */
  readonly said: { readonly text: string; readonly turn: number };
}

export type Ui = StoreApi<UiState>;

export function createUi(): Ui {
  return createStore<UiState>(() => ({
    panel: 'proposals',
    arrangement: keptArrangement(),
    figures: keptFigures(),
    commandBox: false,
    settings: false,
    shortcuts: false,
    steps: false,
    table: false,
    charts: false,
    parts: false,
    csvStyle: null,
    lab: null,
    routeSearch: false,
    faults: false,
    measured: {},
    findingsView: 'findings',
    rules: false,
    comparing: false,
    prices: false,
    drawing: false,
    jobSheet: false,
    printing: null,
    jobs: null,
    versions: false,
    savingTemplate: false,
    help: null,
    guide: null,
    sharing: null,
    menu: null,
    renaming: null,
    notice: null,
    reach: 'leg',
    clip: null,
    update: null,
    keptOffline: false,
    said: { text: '', turn: 0 },
  }));
}
