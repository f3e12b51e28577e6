import type { InlinePart } from '../../graph/document.ts';
import { addInline, changeInline, removeInline } from '../../graph/edits/index.ts';
import { findInline, inlineParts } from '../../hydraulics/catalogue.ts';
import { formatAngle, formatLength, parseAngle, parseLength } from '../../units/index.ts';
import { useApp, useBoard } from '../context.ts';
import { IconButton, QuantityField } from '../controls.tsx';
import { type ChangedPart, PartData } from '../parts/PartData.tsx';
import { RowChooser } from './choosers.tsx';

/** A part that the catalogue does not have. */
const fromSheet = {
  id: 'user',
  name: 'Part from a data sheet',
  what: 'By its C, its loss at a flow, or its equivalent length.',
};

/** The dampers, screens and silencers in one duct: their place, their setting, and a way to add one. */
export function InlineParts({ id, length }: { id: string; length: number }) {
  const { board } = useApp();
  const schemeId = useBoard((state) => state.schemeId);
  const fittings = useBoard(
    (state) =>
      state.live.schemes.find((s) => s.id === state.schemeId)?.segments.find((s) => s.id === id)?.fittings,
  );
  return (
    <div className="part">
      <h3>Parts in line</h3>
      {fittings?.map((part, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a part in line has no other name than its place
        <Part key={`${part.kind} ${index}`} segment={id} length={length} index={index} part={part} />
      ))}
      <RowChooser
        label="Put a part in line"
        rows={[...inlineParts, fromSheet]}
        value=""
        onChoose={(kind) =>
          board.dispatch('put in part', (job) => {
            addInline(job, schemeId, id, {
              kind,
              at: length / 2,
              ...(kind === 'user' && { user: { c: 1 } }),
            });
          })
        }
      />
    </div>
  );
}

interface PartProps {
  readonly segment: string;
  readonly length: number;
  readonly index: number;
  readonly part: InlinePart;
}

function Part({ segment, length, index, part }: PartProps) {
  const { board } = useApp();
  const units = useBoard((state) => state.units);
  const schemeId = useBoard((state) => state.schemeId);
  const row = findInline(part.kind);
  const name = part.name ?? row?.name ?? 'Part from a data sheet';
  const change = (label: string, fields: ChangedPart) =>
    board.dispatch(label, (job) => changeInline(job, schemeId, segment, index, fields));
  return (
    <fieldset className="inline-part">
      <legend>{name}</legend>
      <QuantityField
        label="From the start"
        value={formatLength(part.at, units)}
        parse={(text) => {
          const read = parseLength(text, units);
          return read.ok && read.value > length
            ? { ok: false, message: `The duct is ${formatLength(length, units)} long.` }
            : read;
        }}
        onCommit={(at) => change('move part', { at })}
      />
      {row?.loss.kind === 'damper' && (
        <QuantityField
          label="Blade, from open"
          value={formatAngle(part.angle ?? row.loss.default)}
          parse={(text) => {
            const read = parseAngle(text, units);
            return read.ok && (read.value < 0 || read.value > 90)
              ? { ok: false, message: 'A blade stands between 0° (open) and 90°.' }
              : read;
          }}
          onCommit={(angle) => change('set damper', { angle })}
        />
      )}
      <IconButton
        icon="remove"
        label={`Take out ${name.toLowerCase()}`}
        placement="left"
        onPress={() => board.dispatch('take out part', (job) => removeInline(job, schemeId, segment, index))}
      />
      <PartData part={part} onChange={change} />
    </fieldset>
  );
}
