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
import { words } from '../../words/index.ts';
import { useApp, useBoard } from '../context.ts';
import { QuantityField } from '../controls.tsx';
import { fieldKeys } from '../field-keys.ts';
import { Choice } from '../kitchen/fields.tsx';
import { RepeatBlock } from './RepeatBlock.tsx';

const says = words.panels.room;

const kinds: readonly { readonly id: Block['kind']; readonly name: string }[] = [
  { id: 'chase', name: words.tools.boxes.chase },
  { id: 'obstacle', name: words.tools.boxes.obstacle },
  { id: 'cabinet', name: words.tools.boxes.cabinet },
  { id: 'joist', name: words.tools.boxes.joist },
  { id: 'beam', name: words.tools.boxes.beam },
  { id: 'wall', name: words.tools.boxes.wall },
  { id: 'window', name: words.tools.boxes.window },
  { id: 'intake', name: words.tools.boxes.intake },
  { id: 'lot line', name: words.tools.boxes.lotLine },
];

const faces = [
  { id: 'wall', name: words.tools.boxes.wall },
  { id: 'roof', name: words.tools.boxes.roof },
] as const;

const axes = [
  { axis: 0, size: says.eastWest, from: says.westSide },
  { axis: 1, size: says.northSouth, from: says.southSide },
  { axis: 2, size: says.height, from: says.underside },
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
    board.dispatch(what === 'block' ? words.edits.room.resizeBlock : words.edits.room.resizeExit, (job) => {
      (what === 'block' ? resizeBlock : resizeExit)(job, id, [...box.min], max);
    });
  };
  const place = (axis: 0 | 1 | 2, at: number) => {
    const delta: Vec3 = [0, 0, 0];
    delta[axis] = at - box.min[axis];
    board.dispatch(what === 'block' ? words.edits.room.moveBlock : words.edits.room.moveExit, (job) => {
      (what === 'block' ? moveBlock : moveExit)(job, id, delta);
    });
  };
  return (
    <div className="details">
      <h2>{box.name || (what === 'block' ? says.block : says.exit)}</h2>
      <NameField
        key={box.name}
        value={box.name}
        onCommit={(name) =>
          board.dispatch(
            what === 'block' ? words.edits.room.renameBlock : words.edits.room.renameExit,
            (job) => (what === 'block' ? renameBlock : renameExit)(job, id, name),
          )
        }
      />
      {what === 'block' ? (
        <Choice
          label={says.kind}
          choices={kinds}
          value={box.kind as Block['kind']}
          onChoose={(kind) => board.dispatch(words.edits.room.kind, (job) => setBlockKind(job, id, kind))}
        />
      ) : (
        <Choice
          label={says.kind}
          choices={faces}
          value={box.kind as 'wall' | 'roof'}
          onChoose={(kind) =>
            board.dispatch(words.edits.room.kind, (job) => {
              const face = job.exits.find((each) => each.id === id);
              if (face) face.kind = kind;
            })
          }
        />
      )}
      <h3>{says.size}</h3>
      {axes.map(({ axis, size }) => (
        <QuantityField
          key={size}
          label={size}
          value={formatLength(box.max[axis] - box.min[axis], units)}
          parse={(text) => sizeFrom(text, units, box.max[axis] - box.min[axis])}
          onCommit={(value) => resize(axis, value)}
        />
      ))}
      <h3>{says.place}</h3>
      {axes.map(({ axis, from }) => (
        <QuantityField
          key={from}
          label={from}
          value={formatLength(box.min[axis], units)}
          parse={(text) => parseRelativeLength(text, units, box.min[axis], { negative: true })}
          onCommit={(value) => place(axis, value)}
        />
      ))}
      {what === 'block' && <RepeatBlock block={box as Block} />}
    </div>
  );
}

function sizeFrom(...[text, units, now]: [string, 'imperial' | 'metric', number]) {
  const size = parseRelativeLength(text, units, now);
  return size.ok && size.value < 0.001 ? ({ ok: false, message: says.sizeRefused } as const) : size;
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
      onKeyDown={fieldKeys({
        take,
        drop: () => {
          setText(value);
          return text !== value;
        },
      })}
    >
      <Label>{says.name}</Label>
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
    board.dispatch(words.edits.room.changeNote, (job) => void changeNote(job, id, { text: text.trim() }));
  };
  return (
    <div className="details">
      <h2>{says.note}</h2>
      <TextField
        className="field"
        value={text}
        onChange={setText}
        onBlur={take}
        isInvalid={text.trim() === ''}
      >
        <Label>{says.noteText}</Label>
        <TextArea rows={5} />
        <FieldError className="field-error">{says.noteRefused}</FieldError>
      </TextField>
    </div>
  );
}

/** A dimension only measures: what it says stands on the sheet. */
export function DimensionDetails() {
  return (
    <div className="empty-state">
      <h2>{says.dimension}</h2>
      <p>{says.dimensionHint}</p>
    </div>
  );
}
