import { useState } from 'react';
import { FieldError, Input, Label, TextArea, TextField } from 'react-aria-components';
import type { Block, Vec3 } from '../../graph/document.ts';
import {
  changeNote,
  moveBlock,
  moveExit,
  renameBlock,
  renameExit,
  resizeBlock,
  resizeExit,
  setBlockKind,
} from '../../graph/edits/index.ts';
import { formatLength, parseRelativeLength } from '../../units/index.ts';
import { useApp, useBoard } from '../context.ts';
import { QuantityField } from '../controls.tsx';
import { Choice } from '../kitchen/fields.tsx';

const kinds: readonly { readonly id: Block['kind']; readonly name: string }[] = [
  { id: 'chase', name: 'Chase' },
  { id: 'obstacle', name: 'Obstacle' },
  { id: 'cabinet', name: 'Cabinet' },
  { id: 'joist', name: 'Joist' },
  { id: 'beam', name: 'Beam' },
  { id: 'wall', name: 'Wall' },
];

const faces = [
  { id: 'wall', name: 'Wall' },
  { id: 'roof', name: 'Roof' },
] as const;

const axes = [
  { axis: 0, size: 'East–west', from: 'West side' },
  { axis: 1, size: 'North–south', from: 'South side' },
  { axis: 2, size: 'Height', from: 'Underside' },
] as const;

/** A block of the room or an exit face: what it is, how large, and where. */
export function RoomDetails({ what, id }: { readonly what: 'block' | 'exit'; readonly id: string }) {
  const { board } = useApp();
  const box = useBoard(({ job }) =>
    (what === 'block' ? job.blocks : job.exits).find((each) => each.id === id),
  );
  const units = useBoard((state) => state.units);
  if (!box) return null;

  const resize = (axis: 0 | 1 | 2, size: number) => {
    const max: Vec3 = [...box.max];
    max[axis] = box.min[axis] + size;
    board.dispatch(`resize ${what}`, (job) => {
      (what === 'block' ? resizeBlock : resizeExit)(job, id, [...box.min], max);
    });
  };
  const place = (axis: 0 | 1 | 2, at: number) => {
    const delta: Vec3 = [0, 0, 0];
    delta[axis] = at - box.min[axis];
    board.dispatch(`move ${what}`, (job) => {
      (what === 'block' ? moveBlock : moveExit)(job, id, delta);
    });
  };
  return (
    <div className="details">
      <h2>{box.name || (what === 'block' ? 'Block' : 'Exit face')}</h2>
      <NameField
        key={box.name}
        value={box.name}
        onCommit={(name) =>
          board.dispatch(`rename ${what}`, (job) =>
            (what === 'block' ? renameBlock : renameExit)(job, id, name),
          )
        }
      />
      {what === 'block' ? (
        <Choice
          label="Kind"
          choices={kinds}
          value={box.kind as Block['kind']}
          onChoose={(kind) => board.dispatch('change kind', (job) => setBlockKind(job, id, kind))}
        />
      ) : (
        <Choice
          label="Kind"
          choices={faces}
          value={box.kind as 'wall' | 'roof'}
          onChoose={(kind) =>
            board.dispatch('change kind', (job) => {
              const face = job.exits.find((each) => each.id === id);
              if (face) face.kind = kind;
            })
          }
        />
      )}
      <h3>Size</h3>
      {axes.map(({ axis, size }) => (
        <QuantityField
          key={size}
          label={size}
          value={formatLength(box.max[axis] - box.min[axis], units)}
          parse={(text) => sizeFrom(text, units, box.max[axis] - box.min[axis])}
          onCommit={(value) => resize(axis, value)}
        />
      ))}
      <h3>Place</h3>
      {axes.map(({ axis, from }) => (
        <QuantityField
          key={from}
          label={from}
          value={formatLength(box.min[axis], units)}
          parse={(text) => parseRelativeLength(text, units, box.min[axis], { negative: true })}
          onCommit={(value) => place(axis, value)}
        />
      ))}
    </div>
  );
}

function sizeFrom(...[text, units, now]: [string, 'imperial' | 'metric', number]) {
  const size = parseRelativeLength(text, units, now);
  return size.ok && size.value < 0.001
    ? ({ ok: false, message: 'A size is more than nothing.' } as const)
    : size;
}

function NameField({
  value,
  onCommit,
}: {
  readonly value: string;
  readonly onCommit: (name: string) => void;
}) {
  const [text, setText] = useState(value);
  const take = () => text.trim() !== value && onCommit(text);
  return (
    <TextField
      className="field"
      value={text}
      onChange={setText}
      onBlur={take}
      onKeyDown={(e) => e.key === 'Enter' && take()}
    >
      <Label>Name</Label>
      <Input spellCheck={false} autoComplete="off" />
    </TextField>
  );
}

/** A note pinned to a sheet: its words. */
export function NoteDetails({ id }: { readonly id: string }) {
  const { board } = useApp();
  const note = useBoard(({ job }) => job.sheetNotes?.find((each) => each.id === id));
  const [text, setText] = useState(note?.text ?? '');
  if (!note) return null;
  const take = () => {
    if (text.trim() === '' || text.trim() === note.text) return;
    board.dispatch('change note', (job) => void changeNote(job, id, { text: text.trim() }));
  };
  return (
    <div className="details">
      <h2>Note</h2>
      <TextField
        className="field"
        value={text}
        onChange={setText}
        onBlur={take}
        isInvalid={text.trim() === ''}
      >
        <Label>Words</Label>
        <TextArea rows={5} />
        <FieldError className="field-error">A note needs words; Delete takes it away.</FieldError>
      </TextField>
    </div>
  );
}

/** A dimension only measures: what it says stands on the sheet. */
export function DimensionDetails() {
  return (
    <div className="empty-state">
      <h2>Dimension</h2>
      <p>
        Drag its line nearer or farther off. Double-click it to type the length of the leg that it measures.
        Delete takes it away.
      </p>
    </div>
  );
}
