import { type RefObject, useEffect, useLayoutEffect, useRef, useState } from 'react';
import type { ToolId } from '../canvas/board.ts';
import { Legend } from '../canvas/Legend.tsx';
import type { SheetHandle } from '../canvas/sheet-handle.ts';
import type { FieldAsk } from '../canvas/tools/ask.ts';
import { createToolController } from '../canvas/tools/controller.ts';
import { createWiring } from '../canvas/tools/pointer.ts';
import { words } from '../words/index.ts';
import { useApp, useBoard, useUi } from './context.ts';
import { KindChooser } from './KindChooser.tsx';
import { SheetField } from './SheetField.tsx';
import { IsometricFrame, type Mount, SheetFrame } from './SheetFrame.tsx';
import { TableToggle } from './table/TableToggle.tsx';
import { ArrangementSwitch } from './ViewBar.tsx';

const says = words.sheets.hints;

const sections = ['section-x', 'section-y'] as const;

/** The views on the desk, with one hand over all sheets. */
export function Sheets() {
  const { board, sheets, say, ui } = useApp();
  const section = useBoard((state) => state.section);
  const tool = useBoard((state) => state.tool);
  const grid = useRef<HTMLDivElement>(null);
  const low = useLow(grid);
  const chosen = useUi((state) => state.arrangement);
  const arrangement = low ? 'two' : chosen;
  const [said, setSaid] = useState<{ readonly by: ToolId; readonly text: string } | null>(null);
  const [field, setField] = useState<{ readonly ask: FieldAsk; readonly turn: number } | null>(null);
  const [mount, setMount] = useState<Mount | null>(null);

  useEffect(() => {
    const controller = createToolController(board, {
      announce(text) {
        setSaid({ by: board.getState().tool, text });
        say(text);
      },
      ask: (ask) => setField((now) => ask && { ask, turn: (now?.turn ?? 0) + 1 }),
      menu({ sheet, screen, point }) {
        const box = document.querySelector(`[data-sheet="${sheet}"]`)?.getBoundingClientRect();
        if (box) ui.setState({ menu: { x: box.x + screen.x, y: box.y + screen.y, on: { sheet, point } } });
      },
    });
    const wiring = createWiring(controller);
    const silence = wiring.keyboard(window);
    setMount(() => (handle: SheetHandle) => {
      const unwire = wiring.sheet(handle);
      const detach = sheets.attach(handle);
      return () => {
        unwire();
        detach();
      };
    });
    return () => {
      silence();
      setMount(null);
      controller.dispose();
    };
  }, [board, sheets, say, ui]);

  return (
    <main className="sheets" aria-label={words.sheets.frame.sheets}>
      <div className="view-bar">
        <KindChooser />
        <Hint tool={tool} said={said?.by === tool ? said.text : ''} />
        <ArrangementSwitch shown={arrangement} low={low} />
        <TableToggle />
      </div>
      <div ref={grid} className="sheet-grid" data-arrangement={arrangement}>
        <SheetFrame id="floor" mount={mount} alone={arrangement === 'two'} />
        {arrangement === 'four' && <IsometricFrame />}
        {arrangement === 'two' ? (
          <SheetFrame key={section} id={section} mount={mount} alone />
        ) : (
          sections.map((id) => <SheetFrame key={id} id={id} mount={mount} alone={false} />)
        )}
      </div>
      {field && (
        <SheetField
          key={field.turn}
          field={field.ask}
          onDone={() => setField((now) => (now === field ? null : now))}
        />
      )}
      <div className="legend-row">
        <Legend board={board} />
      </div>
    </main>
  );
}

/** Below this two sheets one over the other show nothing that could be read, px. */
const ROOM_FOR_TWO_ROWS = 290;

/** True where there is room for one row of sheets: a dock is open in a small window. */
function useLow(grid: RefObject<HTMLElement | null>): boolean {
  const [low, setLow] = useState(false);
  useLayoutEffect(() => {
    const element = grid.current;
    if (!element) return;
    const look = () => setLow(element.clientHeight > 0 && element.clientHeight < ROOM_FOR_TWO_ROWS);
    look();
    const observer = new ResizeObserver(look);
    observer.observe(element);
    return () => observer.disconnect();
  }, [grid]);
  return low;
}

const hints: Record<ToolId, string> = {
  select: says.select,
  pan: says.pan,
  hood: says.hood,
  draw: says.draw,
  cap: says.cap,
  insert: says.insert,
  part: says.part,
  split: says.split,
  join: says.join,
  block: says.block,
  exit: says.exit,
  dimension: says.dimension,
  note: says.note,
  measure: says.measure,
  underlay: says.underlay,
  scale: says.scale,
};

/** What the tool in hand does next, and what it has just said. */
function Hint({ tool, said }: { tool: ToolId; said: string }) {
  const words = said === '' ? hints[tool] : said;
  return (
    <p className="tool-hint" title={words}>
      {words}
    </p>
  );
}
