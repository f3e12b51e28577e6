import { useEffect, useState } from 'react';
import { ToggleButton, ToggleButtonGroup } from 'react-aria-components';
import type { BoardState, ToolId } from '../canvas/board.ts';
import { Legend } from '../canvas/Legend.tsx';
import { SheetView } from '../canvas/SheetView.tsx';
import type { SheetHandle } from '../canvas/sheet-handle.ts';
import { createToolController } from '../canvas/tools/controller.ts';
import { createWiring } from '../canvas/tools/pointer.ts';
import { sheetTitles } from '../canvas/view.ts';
import type { SheetId } from '../graph/sheet.ts';
import { useApp, useBoard } from './context.ts';

/** The floor sheet and one section beside it, with one hand over both. */
export function Sheets() {
  const { board, sheets, say } = useApp();
  const section = useBoard((state) => state.section);
  const tool = useBoard((state) => state.tool);
  const [said, setSaid] = useState<{ readonly by: ToolId; readonly text: string } | null>(null);
  const [mount, setMount] = useState<Mount | null>(null);

  useEffect(() => {
    const controller = createToolController(board, {
      announce(text) {
        setSaid({ by: board.getState().tool, text });
        say(text);
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
  }, [board, sheets, say]);

  return (
    <main className="sheets" aria-label="Sheets">
      <Sheet id="floor" mount={mount} />
      <Sheet key={section} id={section} mount={mount} />
      <div className="legend-row">
        <Legend board={board} />
      </div>
      <Hint tool={tool} said={said?.by === tool ? said.text : ''} />
    </main>
  );
}

type Mount = (handle: SheetHandle) => () => void;

function Sheet({ id, mount }: { id: SheetId; mount: Mount | null }) {
  const { board } = useApp();
  const { name, looking } = sheetTitles[id];
  return (
    <section className="sheet-frame" aria-label={`${name} sheet, ${looking}`}>
      {mount && <SheetView board={board} sheet={id} onMount={mount} />}
      {id !== 'floor' && <SectionSwitch />}
    </section>
  );
}

function SectionSwitch() {
  const { board } = useApp();
  const section = useBoard((state) => state.section);
  return (
    <ToggleButtonGroup
      className="switch"
      aria-label="Section"
      selectionMode="single"
      disallowEmptySelection
      selectedKeys={[section]}
      onSelectionChange={([key]) => {
        if (key !== undefined) board.set({ section: key as BoardState['section'] });
      }}
    >
      <ToggleButton id="section-x" aria-label="x-z, looking north">
        x-z
      </ToggleButton>
      <ToggleButton id="section-y" aria-label="y-z, looking west">
        y-z
      </ToggleButton>
    </ToggleButtonGroup>
  );
}

const hints: Record<ToolId, string> = {
  select: 'Click a duct or a turn to see its numbers; drag to move; Delete removes and heals the run.',
  pan: 'Drag to move the sheet. The wheel with Ctrl zooms to the pointer.',
  hood: 'Click on the floor sheet where the middle of the hood is.',
  draw: 'Click where the duct starts, then at each turn. Type a length; Enter or Escape ends the run.',
  cap: 'Click on the open end of a duct.',
  insert: 'Click on a duct to put a turn into it.',
};

/** What the tool in hand does next, and what it has just said. */
function Hint({ tool, said }: { tool: ToolId; said: string }) {
  return <p className="tool-hint">{said === '' ? hints[tool] : said}</p>;
}
