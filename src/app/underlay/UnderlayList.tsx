import { useState } from 'react';
import { Button, Checkbox, Group } from 'react-aria-components';
import type { Underlay } from '../../graph/document.ts';
import { changeUnderlay, removeUnderlay } from '../../graph/edits/index.ts';
import type { SheetId } from '../../graph/sheet.ts';
import { formatLength, parseLength } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useApp, useBoard } from '../context.ts';
import { IconButton, QuantityField } from '../controls.tsx';
import { OpacitySlider } from './OpacitySlider.tsx';
import { sheetNames } from './sheet-names.ts';

const says = words.underlay.list;

const sheets: readonly SheetId[] = ['floor', 'section-x', 'section-y'];

/** Every underlay of the job, sheet by sheet, and what can be changed about it. */
export default function UnderlayList() {
  const { underlays: desk } = useApp();
  const underlays = useBoard((state) => state.job.underlays);
  const place = () => {
    desk.list(false);
    void desk.choose();
  };
  return (
    <>
      {underlays.length === 0 && <p className="hint">{says.empty}</p>}
      {sheets.map((sheet) => {
        const here = underlays.filter((each) => each.sheet === sheet);
        return (
          here.length > 0 && (
            <section key={sheet} aria-label={sheetNames[sheet]}>
              <h3>{sheetNames[sheet]}</h3>
              {here.map((underlay) => (
                <UnderlayCard key={underlay.id} underlay={underlay} />
              ))}
            </section>
          )
        );
      })}
      <Button className="button" onPress={place}>
        {says.place}
      </Button>
    </>
  );
}

function UnderlayCard({ underlay }: { underlay: Underlay }) {
  const { board, underlays: desk } = useApp();
  const units = useBoard((state) => state.units);
  const [dragged, setDragged] = useState<number | null>(null);
  const { id, size, scale, locked = false, invert = false } = underlay;
  const name = underlay.name ?? says.picture;
  const change = (label: string, fields: Partial<Omit<Underlay, 'id'>>) =>
    board.dispatch(label, (job) => {
      changeUnderlay(job, id, fields);
    });
  const take = (tool: 'scale' | 'underlay') => {
    desk.list(false);
    if (underlay.sheet !== 'floor') board.set({ section: underlay.sheet });
    board.set({ tool, underlay: id });
  };
  return (
    <Group className="underlay-card" aria-label={name}>
      <div className="underlay-name">
        <strong>{name}</strong>
        <IconButton
          icon="remove"
          label={says.remove(name)}
          onPress={() => board.dispatch(words.edits.underlay.remove, (job) => removeUnderlay(job, id))}
        />
      </div>
      <OpacitySlider
        value={dragged ?? underlay.opacity}
        onChange={(opacity) => {
          setDragged(opacity);
          board.preview((job) => {
            changeUnderlay(job, id, { opacity });
          });
        }}
        onEnd={(opacity) => {
          setDragged(null);
          change(words.edits.underlay.opacity, { opacity });
        }}
      />
      <div className="ticks">
        <Tick
          label={says.locked}
          on={locked}
          onChange={(on) =>
            change(on ? words.edits.underlay.lock : words.edits.underlay.unlock, { locked: on })
          }
        />
        <Tick
          label={says.invert}
          on={invert}
          onChange={(on) =>
            change(on ? words.edits.underlay.invert : words.edits.underlay.stopInverting, { invert: on })
          }
        />
      </div>
      {size && (
        <QuantityField
          label={says.width}
          value={formatLength(size[0] * scale, units)}
          parse={(text) => {
            const parsed = parseLength(text, units);
            return parsed.ok && !(parsed.value > 0) ? { ok: false, message: says.widthRefused } : parsed;
          }}
          onCommit={(width) => change(words.edits.underlay.scale, { scale: width / size[0] })}
        />
      )}
      <div className="underlay-tools">
        <Button className="button" onPress={() => take('scale')}>
          {says.scaleByPoints}
        </Button>
        <Button className="button" isDisabled={locked} onPress={() => take('underlay')}>
          {says.move}
        </Button>
      </div>
    </Group>
  );
}

function Tick({ label, on, onChange }: { label: string; on: boolean; onChange: (on: boolean) => void }) {
  return (
    <Checkbox className="tick" isSelected={on} onChange={onChange}>
      <span className="tick-box" aria-hidden="true" />
      {label}
    </Checkbox>
  );
}
