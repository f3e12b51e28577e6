import type { Page } from '../../pdf/page.ts';

/** Something of the running text that is never broken across pages. */
export interface Piece {
  /** mm */
  readonly height: number;
  /** Free space before it, mm; none at the top of a page. */
  readonly before?: number;
  /** Stands on the page of what comes after it: a heading. */
  readonly keep?: boolean;
  /** Stands again before this piece where a page begins with it: the head of a table. */
  readonly repeat?: Piece;
  draw(page: Page, x: number, y: number): void;
}

/** Where running text goes on a page. */
export interface Column {
  readonly page: Page;
  readonly x: number;
  readonly y: number;
  readonly height: number;
}

/** Lays pieces below one another, on further pages where one is full. */
export interface Flow {
  add(pieces: readonly Piece[]): void;
  /** The next piece begins a page. */
  breakPage(): void;
  /** How much of the page is taken, 0-1; 1 where none is begun. */
  taken(): number;
}

/**
 * Running text. A chain of kept pieces goes to the next page together with the piece that it belongs to; a piece
 * taller than a page stands alone on one and runs over its foot, so pieces are to be made smaller than that.
 */
export function createFlow(nextColumn: () => Column): Flow {
  let column: Column | null = null;
  let used = 0;
  const turn = () => {
    column = nextColumn();
    used = 0;
  };
  const put = (piece: Piece) => {
    if (!column) turn();
    const at = column as Column | null;
    if (!at) return;
    const gap = used > 0 ? (piece.before ?? 0) : 0;
    piece.draw(at.page, at.x, at.y + used + gap);
    used += gap + piece.height;
  };
  const heightOf = (chain: readonly Piece[]) =>
    chain.reduce((sum, piece, i) => sum + piece.height + (i + used > 0 ? (piece.before ?? 0) : 0), 0);
  return {
    add(pieces) {
      for (let i = 0; i < pieces.length; ) {
        let end = i;
        while (pieces[end]?.keep && end + 1 < pieces.length) end += 1;
        const chain = pieces.slice(i, end + 1);
        if (!column || (used > 0 && used + heightOf(chain) > column.height + 1e-6)) {
          turn();
          const first = chain[0];
          if (first?.repeat) put(first.repeat);
        }
        for (const piece of chain) put(piece);
        i = end + 1;
      }
    },
    breakPage() {
      column = null;
    },
    taken: () => (column ? used / column.height : 1),
  };
}
