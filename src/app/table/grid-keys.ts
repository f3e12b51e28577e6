/** A place in a table of rows and columns, counted from 0. */
export interface GridPlace {
  readonly row: number;
  readonly column: number;
}

/** How far a page key goes, rows. */
const PAGE = 8;

/** The place that a key goes to, held within the table; `null` for a key that does not move. */
export function gridStep(
  key: string,
  mod: boolean,
  at: GridPlace,
  rows: number,
  columns: number,
): GridPlace | null {
  const to = (row: number, column: number): GridPlace => ({
    row: Math.min(rows - 1, Math.max(0, row)),
    column: Math.min(columns - 1, Math.max(0, column)),
  });
  switch (key) {
    case 'ArrowUp':
      return to(mod ? 0 : at.row - 1, at.column);
    case 'ArrowDown':
      return to(mod ? rows - 1 : at.row + 1, at.column);
    case 'ArrowLeft':
      return to(at.row, mod ? 0 : at.column - 1);
    case 'ArrowRight':
      return to(at.row, mod ? columns - 1 : at.column + 1);
    case 'Home':
      return to(mod ? 0 : at.row, 0);
    case 'End':
      return to(mod ? rows - 1 : at.row, columns - 1);
    case 'PageUp':
      return to(at.row - PAGE, at.column);
    case 'PageDown':
      return to(at.row + PAGE, at.column);
    default:
      return null;
  }
}
