import { createStore } from 'zustand/vanilla';
import type { Board } from '../../canvas/board.ts';
import { type Picture, Refused, startScale } from '../../files/underlay/picture.ts';
import type { openSource, Source, SourceTools } from '../../files/underlay/source.ts';
import type { Underlay } from '../../graph/document.ts';
import { addUnderlay } from '../../graph/edits/index.ts';
import type { SheetId, SheetPoint } from '../../graph/sheet.ts';
import { words } from '../../words/index.ts';
import type { SheetsView } from '../sheets-view.ts';
import type { Ui } from '../ui.ts';

const says = words.underlay.desk;

/** How far the placing of a file has come. */
export type Stage =
  | { readonly stage: 'idle' }
  /** Working; what it does, in words. */
  | { readonly stage: 'reading'; readonly name: string; readonly what: string }
  /** Waiting for a choice; `picture` is there where the file has only one. */
  | {
      readonly stage: 'choosing';
      readonly source: Source;
      readonly picture: Picture | null;
      readonly sheet: SheetId;
    };

export interface UnderlayDeskState {
  readonly stage: Stage;
  /** The list of underlays is open. */
  readonly listed: boolean;
}

export interface Placement {
  readonly sheet: SheetId;
  /** 1 for the first. */
  readonly page: number;
  /** Drawing scale, 50 for 1:50; `null` where two points shall give it. */
  readonly ratio: number | null;
  readonly opacity: number;
  readonly locked: boolean;
}

/** Placing pictures under the sheets. A file that is refused changes nothing. */
export interface UnderlayDesk {
  getState(): UnderlayDeskState;
  subscribe(listener: () => void): () => void;
  /** Lets the person choose a file. */
  choose(): Promise<void>;
  read(file: File, sheet: SheetId): Promise<void>;
  place(placement: Placement): Promise<void>;
  /** Drops what is being read or chosen. */
  cancel(): void;
  list(open: boolean): void;
}

/** What reads files: loaded when there is the first one. */
export interface Reader {
  readonly open: typeof openSource;
  readonly tools: SourceTools;
}

export interface UnderlayDeskOptions {
  readonly board: Board;
  readonly ui: Ui;
  readonly sheets: Pick<SheetsView, 'centre' | 'show'>;
  readonly choose: () => Promise<File | null>;
  readonly reader: () => Promise<Reader>;
}

export function createUnderlayDesk({ board, ui, sheets, choose, reader }: UnderlayDeskOptions): UnderlayDesk {
  const store = createStore<UnderlayDeskState>(() => ({ stage: { stage: 'idle' }, listed: false }));
  const idle: Stage = { stage: 'idle' };
  let work: AbortController | null = null;
  let open: Source | null = null;

  const to = (stage: Stage) => store.setState({ stage });

  const end = () => {
    work?.abort();
    work = null;
    open?.close();
    open = null;
    to(idle);
  };

  /** Runs a piece of work that can be cancelled; what goes wrong is told in the notice. */
  const working = async (
    name: string,
    what: string,
    task: (signal: AbortSignal) => Promise<void>,
  ): Promise<void> => {
    const own = new AbortController();
    work = own;
    to({ stage: 'reading', name, what });
    try {
      await task(own.signal);
    } catch (error) {
      if (own.signal.aborted) return;
      end();
      ui.setState({
        notice: {
          title: says.refused(name),
          text: says.refusedText(sentence(error)),
          details: [],
        },
      });
    }
  };

  const put = (picture: Picture, { sheet, ratio, opacity, locked }: Placement) => {
    const scale = startScale(picture, ratio);
    const [width, height] = picture.size.map((pixels) => pixels * scale) as [number, number];
    const middle = sheets.centre(sheet);
    const underlay: Omit<Underlay, 'id'> = {
      name: picture.name.slice(0, 200),
      sheet,
      image: picture.image,
      size: [...picture.size],
      at: [middle.u - width / 2, sheet === 'floor' ? middle.v - height / 2 : 0],
      scale,
      opacity,
      locked,
      invert: picture.bare,
    };
    let id: string | null = null;
    board.dispatch(words.edits.underlay.place, (draft) => {
      id = addUnderlay(draft, underlay);
    });
    if (sheet !== 'floor') board.set({ section: sheet });
    const unknown =
      picture.measure.kind === 'unknown' || (picture.measure.kind === 'paper' && ratio === null);
    if (unknown) board.set({ tool: 'scale', underlay: id });
    const [u, v] = underlay.at;
    const corners: SheetPoint[] = [
      { u, v },
      { u: u + width, v: v + height },
    ];
    requestAnimationFrame(() => sheets.show(sheet, corners));
    if (picture.notes.length > 0)
      ui.setState({
        notice: { title: says.placed(picture.name), text: picture.notes.join(' '), details: [] },
      });
  };

  const desk: UnderlayDesk = {
    getState: store.getState,
    subscribe: store.subscribe,
    list: (listed) => store.setState({ listed }),
    cancel: end,

    async choose() {
      const file = await choose();
      if (file) await desk.read(file, 'floor');
    },

    async read(file, sheet) {
      end();
      await working(file.name, says.reading, async (signal) => {
        const { open: openFile, tools } = await reader();
        const bytes = new Uint8Array(await file.arrayBuffer());
        signal.throwIfAborted();
        const source = await openFile({ name: file.name, bytes }, tools, signal);
        if (signal.aborted) source.close();
        signal.throwIfAborted();
        open = source;
        const picture = source.kind === 'pdf' ? null : await source.picture(1, signal);
        signal.throwIfAborted();
        to({ stage: 'choosing', source, picture, sheet });
      });
    },

    async place(placement) {
      const { stage } = store.getState();
      if (stage.stage !== 'choosing') return;
      const { source } = stage;
      const taken = (picture: Picture) => {
        end();
        put(picture, placement);
      };
      if (stage.picture) return taken(stage.picture);
      await working(source.name, says.drawingPage(placement.page), async (signal) => {
        const picture = await source.picture(placement.page, signal);
        signal.throwIfAborted();
        taken(picture);
      });
    },
  };
  return desk;
}

function sentence(error: unknown): string {
  if (error instanceof Refused) return error.message;
  const why = error instanceof Error ? error.message : String(error);
  return says.unreadable(why);
}
