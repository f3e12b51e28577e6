import { type KeyboardEvent, type RefObject, useEffect, useRef, useState } from 'react';
import { nothing } from '../../canvas/board.ts';
import { deleteSelection } from '../../graph/edits/index.ts';
import { type TraceRow, traceRoute } from '../../graph/trace.ts';
import { words } from '../../words/index.ts';
import { useApp, useBoard } from '../context.ts';
import { IconButton } from '../controls.tsx';
import { type Asked, cellOf, columns } from './cells.ts';
import { Extend } from './Extend.tsx';
import { GridCell } from './GridCell.tsx';
import { type GridPlace, gridStep } from './grid-keys.ts';

const says = words.table.grid;

/** The route as a table in flow order: the same graph as on the sheets, read and edited without them. */
export default function RouteTable() {
  const { board, ui, say } = useApp();
  const state = useBoard((now) => now);
  const rows = traceRoute(state.live, state.schemeId);
  const grid = useRef<HTMLTableElement>(null);
  const [place, setPlace] = useState<GridPlace>({ row: 0, column: 0 });
  const [editing, setEditing] = useState<{ readonly start: string | null } | null>(null);
  /** Set where the focus goes to the cell in hand once the table has been drawn again. */
  const wantsFocus = useRef(false);
  const at = useSelectedRow(rows, place);
  const here = rows[at.row];

  useEffect(() => {
    if (!wantsFocus.current || editing) return;
    wantsFocus.current = false;
    grid.current?.querySelector<HTMLElement>('[data-at]')?.focus();
  });

  const section = useRef<HTMLElement>(null);
  useFocusInAndOut(section);

  const select = (row: TraceRow | undefined) => {
    if (!row) return;
    const selection =
      row.kind === 'node' ? { nodes: [row.id], segments: [] } : { nodes: [], segments: [row.id] };
    board.set({ selection });
    board.set({ tool: 'select' });
  };
  const goTo = (next: GridPlace) => {
    setEditing(null);
    setPlace(next);
    select(rows[next.row]);
    wantsFocus.current = true;
  };
  const finish = (asked: Asked | null, stay: boolean) => {
    wantsFocus.current = stay;
    setEditing(null);
    if (asked?.ok) board.dispatch(asked.label, asked.recipe);
  };
  const remove = () => {
    if (!here) return;
    const doomed =
      here.kind === 'node' ? { nodes: [here.id], segments: [] } : { nodes: [], segments: [here.id] };
    wantsFocus.current = true;
    board.dispatch(words.edits.route.delete, (job) => deleteSelection(job, state.schemeId, doomed));
    const left = traceRoute(board.getState().job, state.schemeId);
    const next = Math.min(at.row, left.length - 1);
    setPlace({ row: Math.max(0, next), column: at.column });
    select(left[next]);
    if (left.length === 0) board.set({ selection: nothing });
    say(words.commands.edit.delete.done);
  };
  const openMenu = (target: EventTarget & Element) => {
    const box = target.getBoundingClientRect();
    ui.setState({ menu: { x: box.left + 12, y: box.bottom } });
  };

  const onKeyDown = (event: KeyboardEvent) => {
    if (editing) return;
    const mod = event.ctrlKey || event.metaKey;
    const next = gridStep(event.key, mod, at, rows.length, columns.length);
    const cell = here && columns[at.column] && cellOf(state, here, columns[at.column]?.id ?? 'place');
    const edits = cell?.typed !== undefined || cell?.picked !== undefined;
    if (next) goTo(next);
    else if (event.key === 'Enter' || event.key === 'F2') {
      if (edits) setEditing({ start: null });
      else say(says.workedOut);
    } else if (event.key === 'Delete' || event.key === 'Backspace') remove();
    else if (event.key === 'ContextMenu' || (event.key === 'F10' && event.shiftKey)) {
      select(here);
      openMenu(event.target as Element);
    } else if (!mod && !event.altKey && event.key.length === 1) {
      if (event.key === '?') return;
      if (cell?.typed && event.key !== ' ') setEditing({ start: event.key });
      else if (edits && event.key === ' ') setEditing({ start: null });
    } else return;
    event.preventDefault();
    event.stopPropagation();
  };

  return (
    <section ref={section} className="route-table" aria-label={says.heading}>
      <div className="table-bar">
        <h2>{says.heading}</h2>
        <Extend
          from={here}
          onDrawn={(node) => {
            const drawn = traceRoute(board.getState().job, state.schemeId);
            setPlace({
              row: Math.max(
                0,
                drawn.findIndex(({ id }) => id === node),
              ),
              column: 0,
            });
          }}
        />
        <IconButton icon="close" label={says.close} onPress={() => ui.setState({ table: false })} />
      </div>
      {rows.length === 0 ? (
        <p className="empty">{says.empty}</p>
      ) : (
        <div className="table-scroll">
          {/* biome-ignore lint/a11y/noNoninteractiveElementToInteractiveRole: a table whose cells are worked by keys */}
          <table ref={grid} role="grid" aria-label={says.label} onKeyDown={onKeyDown}>
            <thead>
              <tr>
                {columns.map((column) => (
                  <th key={column.id} scope="col" data-column={column.id}>
                    {column.title}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {rows.map((row, r) => (
                <tr
                  key={`${row.kind} ${row.id}`}
                  data-kind={row.kind}
                  data-id={row.id}
                  aria-selected={r === at.row}
                >
                  {columns.map((column, c) => (
                    <GridCell
                      key={column.id}
                      column={column.id}
                      title={column.title}
                      words={c === 0 ? row.words : undefined}
                      cell={cellOf(state, row, column.id)}
                      here={r === at.row && c === at.column}
                      editing={r === at.row && c === at.column ? editing : null}
                      onPoint={() => goTo({ row: r, column: c })}
                      onEdit={() => setEditing({ start: null })}
                      onFinish={finish}
                      onMenu={openMenu}
                    />
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </section>
  );
}

/** The row in hand: what is selected on the sheets, else where the table was left. */
function useSelectedRow(rows: readonly TraceRow[], place: GridPlace): GridPlace {
  const { nodes, segments } = useBoard((state) => state.selection);
  const [id, ...others] = [...nodes, ...segments];
  const kind = nodes.length > 0 ? 'node' : 'segment';
  const selected = others.length > 0 ? -1 : rows.findIndex((row) => row.id === id && row.kind === kind);
  const row = selected >= 0 ? selected : Math.max(0, Math.min(rows.length - 1, place.row));
  return { row, column: place.column };
}

/** Whoever opens the table goes on in it; whoever closes it goes on at the sheets. */
function useFocusInAndOut(section: RefObject<HTMLElement | null>): void {
  useEffect(() => {
    const first = section.current?.querySelector<HTMLElement>('[data-at]');
    (first ?? section.current?.querySelector<HTMLElement>('input'))?.focus();
    return () => {
      requestAnimationFrame(() => {
        if (document.activeElement !== document.body) return;
        document.querySelector<HTMLElement>('[data-sheet]')?.focus({ preventScroll: true });
      });
    };
  }, [section]);
}
