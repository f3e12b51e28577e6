import { useState } from 'react';
import { Button, Checkbox, Group } from 'react-aria-components';
import type { Underlay } from '../../graph/document.ts';
import { changeUnderlay, removeUnderlay } from '../../graph/edits/index.ts';
import type { SheetId } from '../../graph/sheet.ts';
import { formatLength, parseLength } from '../../units/index.ts';
import { useApp, useBoard } from '../context.ts';
import { IconButton, QuantityField } from '../controls.tsx';
import { OpacitySlider } from './OpacitySlider.tsx';
import { sheetNames } from './sheet-names.ts';

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
      {underlays.length === 0 && (
        <p className="hint">
          A scan, a photo or a drawing to trace over: PNG, JPEG, SVG, a page of a PDF, or DXF. It stays in the
          job's file.
        </p>
      )}
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
        Place an underlay…
      </Button>
    </>
  );
}

function UnderlayCard({ underlay }: { underlay: Underlay }) {
  const { board, underlays: desk } = useApp();
  const units = useBoard((state) => state.units);
  const [dragged, setDragged] = useState<number | null>(null);
  const { id, size, scale, locked = false, invert = false } = underlay;
  const name = underlay.name ?? 'Picture';
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
          label={`Remove ${name}`}
          onPress={() => board.dispatch('remove underlay', (job) => removeUnderlay(job, id))}
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
          change('change underlay opacity', { opacity });
        }}
      />
      <div className="ticks">
        <Tick
          label="Locked"
          on={locked}
          onChange={(on) => change(on ? 'lock underlay' : 'unlock underlay', { locked: on })}
        />
        <Tick
          label="Invert in dark"
          on={invert}
          onChange={(on) => change(on ? 'invert underlay' : 'stop inverting underlay', { invert: on })}
        />
      </div>
      {size && (
        <QuantityField
          label="Width of the whole picture"
          value={formatLength(size[0] * scale, units)}
          parse={(text) => {
            const parsed = parseLength(text, units);
            return parsed.ok && !(parsed.value > 0)
              ? { ok: false, message: 'A picture is wider than nothing.' }
              : parsed;
          }}
          onCommit={(width) => change('set underlay scale', { scale: width / size[0] })}
        />
      )}
      <div className="underlay-tools">
        <Button className="button" onPress={() => take('scale')}>
          Scale by two points
        </Button>
        <Button className="button" isDisabled={locked} onPress={() => take('underlay')}>
          Move
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
