import type { SheetCell, SheetColumn, SheetTable } from '../../files/job-sheet/types.ts';
import { formulaRuns } from '../../graph/derive/formula.ts';
import { Runs } from '../explain/Runs.tsx';

/** Columns from which a table is set finer. */
const MANY = 9;
/** Columns that half a page has room for. */
const BROAD = 5;
/** Rows from which a table may go on to the next page. */
const LONG = 15;

/** A table whose head stands again on every page that it goes on to. */
export function Table({ table: { columns, rows, caption, notes } }: { table: SheetTable }) {
  const whole = columns.reduce((sum, { weight }) => sum + weight, 0);
  const looks = [
    'paper-table',
    ...(columns.length > MANY ? ['many'] : []),
    ...(columns.length > BROAD ? ['broad'] : []),
    ...(rows.length < LONG ? ['whole'] : []),
  ];
  return (
    <>
      <table className={looks.join(' ')}>
        {caption && <caption>{caption}</caption>}
        <colgroup>
          {columns.map(({ id, weight }) => (
            <col key={id} style={{ width: `${(100 * weight) / whole}%` }} />
          ))}
        </colgroup>
        <thead>
          <tr>
            {columns.map((column) => (
              <th key={column.id} scope="col" className={column.align}>
                {column.symbol ? <Symbols text={column.head} /> : column.head}
                {column.unit !== undefined && <small>{column.unit}</small>}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ id, cells, total }) => (
            <tr key={id} className={total ? 'total' : undefined}>
              {columns.map((column, i) => (
                <Cell key={column.id} column={column} cell={cells[i]} />
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      {notes.map((note) => (
        <p key={note} className="paper-quiet">
          {note}
        </p>
      ))}
    </>
  );
}

function Cell({ column, cell }: { column: SheetColumn; cell: SheetCell | undefined }) {
  const text = cell?.text ?? '';
  return (
    <td className={cell?.poor ? `${column.align} poor` : column.align}>
      {column.symbolCells && text !== '' ? <Symbols text={text} /> : text}
    </td>
  );
}

function Symbols({ text }: { text: string }) {
  return <Runs runs={formulaRuns(text, [text])} />;
}
