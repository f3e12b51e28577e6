import { useMemo, useState } from 'react';
import { ToggleButton, ToggleButtonGroup } from 'react-aria-components';
import type { BoardState } from '../canvas/board.ts';
import { IsometricView } from '../canvas/IsometricView.tsx';
import { SheetView } from '../canvas/SheetView.tsx';
import type { SheetHandle } from '../canvas/sheet-handle.ts';
import { sheetTitles } from '../drawing/view.ts';
import type { SheetId } from '../graph/sheet.ts';
import { formatLength, type Parsed, parseLength, type System } from '../units/index.ts';
import { words } from '../words/index.ts';
import { useApp, useBoard } from './context.ts';
import { QuantityField } from './controls.tsx';
import { EmptySheet } from './EmptySheet.tsx';
import { createLookout, Levels } from './Levels.tsx';

const says = words.sheets.frame;

export type Mount = (handle: SheetHandle) => () => void;

/** One sheet with its name, the depth that it is drawn or cut at, and the lines of the others' depths. */
export function SheetFrame({
  id,
  mount,
  alone,
}: {
  readonly id: SheetId;
  readonly mount: Mount | null;
  /** The only section on the desk: it can be exchanged for the other. */
  readonly alone: boolean;
}) {
  const { board } = useApp();
  const lookout = useMemo(createLookout, []);
  const { name, looking } = sheetTitles[id];
  return (
    <section className="sheet-frame" aria-label={says.label(name, looking)}>
      <header className="sheet-head">
        <h2>
          {name} <span className="roomy">{looking}</span>
        </h2>
        {id === 'floor' ? <WorkingHeight /> : <Cut section={id} />}
        {id !== 'floor' && alone && <SectionSwitch />}
      </header>
      <div className="sheet-body">
        {mount && <SheetView board={board} sheet={id} onMount={mount} onView={lookout.see} />}
        <Levels sheet={id} lookout={lookout} both={!alone} />
        <EmptySheet sheet={id} />
      </div>
    </section>
  );
}

/** The route in space, to be looked at from all around. */
export function IsometricFrame() {
  const { board } = useApp();
  const [turn, setTurn] = useState('');
  return (
    <section className="sheet-frame" aria-label={says.isometricView}>
      <header className="sheet-head">
        <h2>
          {says.isometric} <span className="roomy">{turn}</span>
        </h2>
      </header>
      <div className="sheet-body">
        <IsometricView board={board} onTurn={setTurn} />
      </div>
    </section>
  );
}

const signed = (text: string, units: System): Parsed => parseLength(text, units, { negative: true });

/** The height at which the floor sheet draws. */
function WorkingHeight() {
  const { board } = useApp();
  const height = useBoard((state) => state.workingHeight);
  const units = useBoard((state) => state.units);
  return (
    <QuantityField
      label={says.workingHeight}
      value={formatLength(height, units)}
      parse={(text) => signed(text, units)}
      onCommit={(workingHeight) => board.set({ workingHeight })}
    />
  );
}

/** Where a section is cut: what lies before the plane is faint there, what it cuts is strong. */
function Cut({ section }: { section: BoardState['section'] }) {
  const { board } = useApp();
  const depth = useBoard((state) => state.sectionDepth[section]);
  const units = useBoard((state) => state.units);
  return (
    <QuantityField
      label={says.cutAt(section === 'section-x' ? 'y' : 'x')}
      value={depth === null ? says.whole : formatLength(depth, units)}
      parse={(text) =>
        /^(all|none|)$/i.test(text.trim()) || text.trim() === says.whole
          ? { ok: true, value: Number.NaN }
          : signed(text, units)
      }
      onCommit={(value) => {
        const { sectionDepth } = board.getState();
        board.set({ sectionDepth: { ...sectionDepth, [section]: Number.isNaN(value) ? null : value } });
      }}
    />
  );
}

function SectionSwitch() {
  const { board } = useApp();
  const section = useBoard((state) => state.section);
  return (
    <ToggleButtonGroup
      className="switch"
      aria-label={says.section}
      selectionMode="single"
      disallowEmptySelection
      selectedKeys={[section]}
      onSelectionChange={([key]) => {
        if (key !== undefined) board.set({ section: key as BoardState['section'] });
      }}
    >
      <ToggleButton id="section-x" aria-label={says.lookingNorth}>
        {says.xz}
      </ToggleButton>
      <ToggleButton id="section-y" aria-label={says.lookingWest}>
        {says.yz}
      </ToggleButton>
    </ToggleButtonGroup>
  );
}
