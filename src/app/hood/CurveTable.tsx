import { type ClipboardEvent, type FocusEvent, useState } from 'react';
import { Button, Input, TextField } from 'react-aria-components';
import { unitOf } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useBoard } from '../context.ts';
import { IconButton } from '../controls.tsx';
import { fieldKeys } from '../field-keys.ts';
import {
  type Column,
  type CurveRow,
  emptyRow,
  pastedRows,
  type ReadRows,
  readRows,
  rowsOf,
  typed,
  withPasted,
} from './curve-rows.ts';

const says = words.hood.curve;

type Points = readonly (readonly [number, number])[];

interface CurveTableProps {
  readonly points: Points;
  /** Whether points may be added and taken out; two certified points stay two. */
  readonly fixed?: boolean;
  readonly pressureName: string;
  readonly onCommit: (points: [number, number][]) => void;
}

interface Draft {
  readonly rows: readonly CurveRow[];
  /** The points that it was begun from; it is dropped when they change. */
  readonly from: Points;
}

/** Flow and pressure, point by point; what is wrong stays as it was typed, with what is wrong about it. */
export function CurveTable({ points, fixed = false, pressureName, onCommit }: CurveTableProps) {
  const units = useBoard((state) => state.units);
  const [draft, setDraft] = useState<Draft | null>(null);
  const [wrong, setWrong] = useState<Exclude<ReadRows, { ok: true }> | null>(null);
  const editing = draft !== null && draft.from === points;
  const rows = editing ? draft.rows : rowsOf(points, units);

  const edit = (next: readonly CurveRow[]) => {
    setDraft({ rows: next, from: points });
    setWrong(null);
  };
  const take = (next: readonly CurveRow[]) => {
    const read = readRows(next, units);
    const count = read.ok ? read.points.length : 0;
    if (!read.ok || (fixed && count !== points.length)) {
      setDraft({ rows: next, from: points });
      setWrong(read.ok ? { ok: false, message: says.pointsTaken(points.length) } : read);
      return;
    }
    setDraft(null);
    setWrong(null);
    onCommit(read.points);
  };
  const leave = (event: FocusEvent<HTMLElement>) => {
    if (editing && !event.currentTarget.contains(event.relatedTarget)) take(rows);
  };
  const paste = (event: ClipboardEvent, at: number) => {
    const pasted = pastedRows(event.clipboardData.getData('text'));
    if (!pasted) return;
    event.preventDefault();
    take(withPasted(rows, at, pasted));
  };
  const cellOf = (row: CurveRow, at: number, column: Column) => {
    const name = column === 'flow' ? says.flow : pressureName;
    return (
      <td>
        <TextField
          className="field"
          aria-label={says.cell(name, at + 1)}
          value={row[column].text}
          isInvalid={wrong?.row === at && wrong.column === column}
          onChange={(text) =>
            edit(rows.map((each, i) => (i === at ? { ...each, [column]: typed(text) } : each)))
          }
          onKeyDown={fieldKeys({
            take: () => take(rows),
            drop: () => {
              setDraft(null);
              setWrong(null);
              return editing;
            },
          })}
          onPaste={(event) => paste(event, at)}
        >
          <Input spellCheck={false} autoComplete="off" inputMode="decimal" />
        </TextField>
      </td>
    );
  };

  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: it only watches where the focus goes
    <div className="points" onBlur={leave}>
      <table className="points-table">
        <thead>
          <tr>
            <th scope="col">{says.flowIn(unitOf('flow', units))}</th>
            <th scope="col">
              {pressureName}, {unitOf('pressure', units)}
            </th>
            {!fixed && (
              <th scope="col">
                <span className="unseen">{says.takeOut}</span>
              </th>
            )}
          </tr>
        </thead>
        <tbody>
          {rows.map((row, at) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a point has no other name than its place
            <tr key={at}>
              {cellOf(row, at, 'flow')}
              {cellOf(row, at, 'pressure')}
              {!fixed && (
                <td>
                  <IconButton
                    icon="close"
                    label={says.takeOutPoint(at + 1)}
                    placement="left"
                    onPress={() => take(rows.filter((_, i) => i !== at))}
                  />
                </td>
              )}
            </tr>
          ))}
        </tbody>
      </table>
      {wrong && (
        <p className="field-error" role="alert">
          {wrong.message}
        </p>
      )}
      {!fixed && (
        <Button className="text-button" onPress={() => edit([...rows, emptyRow])}>
          {says.addPoint}
        </Button>
      )}
      <p className="hint">{says.pasteHint}</p>
    </div>
  );
}
