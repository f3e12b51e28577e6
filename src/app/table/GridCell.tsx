import { useEffect, useId, useRef, useState } from 'react';
import { words } from '../../words/index.ts';
import type { Asked, Cell, ColumnId } from './cells.ts';

interface GridCellProps {
  readonly column: ColumnId;
  readonly title: string;
  /** The whole row in words, at its head. */
  readonly words: string | undefined;
  readonly cell: Cell;
  /** The one cell that the Tab key stops at. */
  readonly here: boolean;
  /** Open for editing, with what was typed to open it. */
  readonly editing: { readonly start: string | null } | null;
  readonly onPoint: () => void;
  readonly onEdit: () => void;
  /** `stay` where the focus goes back to the cell, and not to where the person went. */
  readonly onFinish: (asked: Asked | null, stay: boolean) => void;
  readonly onMenu: (target: Element) => void;
}

/** One cell of the route table, read until it is opened for editing. */
export function GridCell(props: GridCellProps) {
  const { cell, column, here, editing } = props;
  const edits = cell.typed !== undefined || cell.picked !== undefined;
  const Tag = column === 'place' ? 'th' : 'td';
  return (
    <Tag
      {...(column === 'place' ? { scope: 'row' } : {})}
      role={column === 'place' ? 'rowheader' : 'gridcell'}
      data-column={column}
      data-at={here || undefined}
      data-edits={edits || undefined}
      tabIndex={here && !editing ? 0 : -1}
      aria-readonly={!edits}
      aria-label={editing ? undefined : (props.words ?? labelOf(props))}
      onMouseDown={(event) => {
        if (editing) return;
        event.preventDefault();
        props.onPoint();
        if (edits && event.button === 0) props.onEdit();
      }}
      onContextMenu={(event) => {
        event.preventDefault();
        props.onMenu(event.currentTarget);
      }}
    >
      {editing ? <Editor {...props} start={editing.start} /> : cell.text}
    </Tag>
  );
}

function labelOf({ cell, title }: GridCellProps): string | undefined {
  if (cell.text === '') return words.table.grid.none(title);
  return `${cell.name ?? title}: ${cell.text}`;
}

function Editor(props: GridCellProps & { readonly start: string | null }) {
  return props.cell.picked ? <Picker {...props} picked={props.cell.picked} /> : <Typed {...props} />;
}

function Typed({ cell, title, start, onFinish }: GridCellProps & { readonly start: string | null }) {
  const [text, setText] = useState(start ?? cell.text);
  const [error, setError] = useState<string | null>(null);
  const input = useRef<HTMLInputElement>(null);
  const about = useId();
  useEffect(() => {
    input.current?.focus();
    if (start === null) input.current?.select();
  }, [start]);
  const done = useOnce(onFinish);
  const take = (stay: boolean) => {
    const asked = text === cell.text || !cell.typed ? null : cell.typed(text);
    if (asked && !asked.ok && stay) setError(asked.message);
    else done(asked, stay);
  };
  return (
    <>
      <input
        ref={input}
        value={text}
        aria-label={cell.name ?? title}
        aria-invalid={error !== null}
        aria-describedby={error === null ? undefined : about}
        spellCheck={false}
        autoComplete="off"
        onChange={(event) => {
          setText(event.target.value);
          setError(null);
        }}
        onBlur={() => take(false)}
        onKeyDown={(event) => {
          if (event.key === 'Enter') take(true);
          else if (event.key === 'Escape') done(null, true);
          else return;
          event.preventDefault();
          event.stopPropagation();
        }}
      />
      {error !== null && (
        <span id={about} role="alert" className="cell-error">
          {error}
        </span>
      )}
    </>
  );
}

function Picker({ cell, title, picked, onFinish }: GridCellProps & { picked: NonNullable<Cell['picked']> }) {
  const [value, setValue] = useState(picked.value);
  const list = useRef<HTMLSelectElement>(null);
  useEffect(() => list.current?.focus(), []);
  const done = useOnce(onFinish);
  const take = (stay: boolean) => done(value === picked.value ? null : picked.take(value), stay);
  return (
    <select
      ref={list}
      value={value}
      aria-label={cell.name ?? title}
      onChange={(event) => setValue(event.target.value)}
      onBlur={() => take(false)}
      onKeyDown={(event) => {
        if (event.key === 'Enter') take(true);
        else if (event.key === 'Escape') done(null, true);
        else return;
        event.preventDefault();
        event.stopPropagation();
      }}
    >
      {picked.choices.map(({ id, name }) => (
        <option key={id} value={id}>
          {name}
        </option>
      ))}
    </select>
  );
}

/** A field that goes away loses the focus too: only the first of the two ends the editing. */
function useOnce<Args extends readonly unknown[]>(act: (...args: Args) => void): (...args: Args) => void {
  const over = useRef(false);
  return (...args) => {
    if (over.current) return;
    over.current = true;
    act(...args);
  };
}
