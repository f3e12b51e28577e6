import { ToggleButton, ToggleButtonGroup } from 'react-aria-components';
import type { BoardState, ToolId } from '../canvas/board.ts';
import { sheetTitles } from '../canvas/view.ts';
import type { SheetId } from '../graph/sheet.ts';
import { useApp, useBoard } from './context.ts';

/** The floor sheet and one section beside it, with one hand over both. */
export function Sheets() {
  const section = useBoard((state) => state.section);
  return (
    <main className="sheets" aria-label="Sheets">
      <Sheet id="floor" />
      <Sheet key={section} id={section} />
      <Hint said="" />
    </main>
  );
}

function Sheet({ id }: { id: SheetId }) {
  const { name, looking } = sheetTitles[id];
  return (
    <section className="sheet" aria-label={`${name} sheet, ${looking}`}>
      <header className="sheet-head">
        <h2>{name}</h2>
        <span className="looking">{looking}</span>
        {id === 'floor' ? <ColourSwitch /> : <SectionSwitch />}
      </header>
      <div className="sheet-body" />
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

function ColourSwitch() {
  const { board } = useApp();
  const colourBy = useBoard((state) => state.colourBy);
  return (
    <ToggleButtonGroup
      className="switch"
      aria-label="Colour the duct by"
      selectionMode="single"
      disallowEmptySelection
      selectedKeys={[colourBy]}
      onSelectionChange={([key]) => {
        if (key !== undefined) board.set({ colourBy: key as BoardState['colourBy'] });
      }}
    >
      <ToggleButton id="velocity">Velocity</ToggleButton>
      <ToggleButton id="loss">Loss rate</ToggleButton>
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
function Hint({ said }: { said: string }) {
  const tool = useBoard((state) => state.tool);
  return (
    <p className="tool-hint">
      <span role="status" aria-live="polite">
        {said}
      </span>
      {said === '' && hints[tool]}
    </p>
  );
}
