import { useEffect, useState } from 'react';
import type { ToolId } from '../canvas/board.ts';
import { Legend } from '../canvas/Legend.tsx';
import type { SheetHandle } from '../canvas/sheet-handle.ts';
import type { FieldAsk } from '../canvas/tools/ask.ts';
import { createToolController } from '../canvas/tools/controller.ts';
import { createWiring } from '../canvas/tools/pointer.ts';
import { useApp, useBoard, useUi } from './context.ts';
import { SheetField } from './SheetField.tsx';
import { IsometricFrame, type Mount, SheetFrame } from './SheetFrame.tsx';
import { TableToggle } from './table/TableToggle.tsx';
import { ArrangementSwitch } from './ViewBar.tsx';

const sections = ['section-x', 'section-y'] as const;

/** The views on the desk, with one hand over all sheets. */
export function Sheets() {
  const { board, sheets, say, ui } = useApp();
  const section = useBoard((state) => state.section);
  const tool = useBoard((state) => state.tool);
  const arrangement = useUi((state) => state.arrangement);
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
    <main className="sheets" aria-label="Sheets">
      <div className="view-bar">
        <Hint tool={tool} said={said?.by === tool ? said.text : ''} />
        <ArrangementSwitch />
        <TableToggle />
      </div>
      <div className="sheet-grid" data-arrangement={arrangement}>
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

const hints: Record<ToolId, string> = {
  select: 'Click a duct or a turn for its numbers. Drag to move it. Delete heals the run.',
  pan: 'Drag to move the sheet. The wheel with Ctrl zooms to the pointer.',
  hood: 'Click on the floor sheet where the middle of the hood is.',
  draw: 'Click the start, then each turn. Type a length for an exact leg. Escape ends the run.',
  cap: 'Click on the open end of a duct.',
  insert: 'Click on a duct to put a turn into it.',
  part: 'Click on a duct to put the part there. Tab: next kind of part.',
  split: 'Click on a turn, a junction or a duct to part the run there.',
  join: 'Click on an open end, then on the end or the turn that it joins.',
  block: 'Click two corners, or type the sizes with Tab between. Tab first: next kind.',
  exit: 'Click two corners, or along the wall. Tab first: wall or roof.',
  dimension: 'Click two places, then where the line stands. Go on for a chain.',
  note: 'Click where the note is pinned, then type it.',
  measure: 'Click two places to measure between them. Shift keeps it square.',
  underlay: 'Drag an unlocked underlay, or nudge it with the arrow keys. Escape ends.',
  scale: 'Click two points whose distance you know, then type it. Escape ends.',
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
