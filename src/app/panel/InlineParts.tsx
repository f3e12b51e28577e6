import type { InlinePart } from '../../graph/document.ts';
import { addInline, changeInline, removeInline } from '../../graph/edits/index.ts';
import { findInline, inlineParts } from '../../hydraulics/catalogue.ts';
import { formatAngle, formatLength, parseAngle, parseLength } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useApp, useBoard } from '../context.ts';
import { IconButton, QuantityField } from '../controls.tsx';
import { type ChangedPart, PartData } from '../parts/PartData.tsx';
import { Terms } from '../term/Terms.tsx';
import { RowChooser } from './choosers.tsx';

const says = words.panels.inline;

/** A part that the catalogue does not have. */
const fromSheet = {
  id: 'user',
  name: says.ownData,
  what: says.ownDataMeans,
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
      <h3>{says.heading}</h3>
      <Terms of={['backdraughtDamper', 'balancingDamper']} />
      {fittings?.map((part, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a part in line has no other name than its place
        <Part key={`${part.kind} ${index}`} segment={id} length={length} index={index} part={part} />
      ))}
      <RowChooser
        label={says.put}
        rows={[...inlineParts, fromSheet]}
        value=""
        onChoose={(kind) =>
          board.dispatch(words.edits.parts.put, (job) => {
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
  const name = part.name ?? row?.name ?? says.ownData;
  const change = (label: string, fields: ChangedPart) =>
    board.dispatch(label, (job) => changeInline(job, schemeId, segment, index, fields));
  return (
    <fieldset className="inline-part">
      <legend>{name}</legend>
      <QuantityField
        label={says.fromStart}
        value={formatLength(part.at, units)}
        parse={(text) => {
          const read = parseLength(text, units);
          return read.ok && read.value > length
            ? { ok: false, message: says.beyondEnd(formatLength(length, units)) }
            : read;
        }}
        onCommit={(at) => change(words.edits.parts.move, { at })}
      />
      {row?.loss.kind === 'damper' && (
        <QuantityField
          label={says.blade}
          value={formatAngle(part.angle ?? row.loss.default)}
          parse={(text) => {
            const read = parseAngle(text, units);
            return read.ok && (read.value < 0 || read.value > 90)
              ? { ok: false, message: says.bladeRefused }
              : read;
          }}
          onCommit={(angle) => change(words.edits.parts.setDamper, { angle })}
        />
      )}
      <IconButton
        icon="remove"
        label={says.takeOut(name.toLowerCase())}
        placement="left"
        onPress={() =>
          board.dispatch(words.edits.parts.takeOut, (job) => removeInline(job, schemeId, segment, index))
        }
      />
      <PartData part={part} onChange={change} />
    </fieldset>
  );
}
