import { useState } from 'react';
import { Button } from 'react-aria-components';
import { joined, selectionOf } from '../../canvas/selection.ts';
import type { Block, Vec3 } from '../../graph/document.ts';
import { mostRepeated, repeatBlock, usualSpacing } from '../../graph/edits/index.ts';
import { formatLength, parseLength } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useApp, useBoard } from '../context.ts';
import { QuantityField } from '../controls.tsx';
import { Choice } from '../kitchen/fields.tsx';
import { readPlain } from '../kitchen/reading.ts';

const says = words.repeat;

const ways = {
  east: [1, 0, 0],
  west: [-1, 0, 0],
  north: [0, 1, 0],
  south: [0, -1, 0],
  up: [0, 0, 1],
  down: [0, 0, -1],
} as const satisfies Record<string, Vec3>;

type Way = keyof typeof ways;

const choices = (Object.keys(ways) as Way[]).map((id) => ({ id, name: says.ways[id] }));

/** More of a block in a row, as joists stand: one edit. */
export function RepeatBlock({ block }: { readonly block: Block }) {
  const { board, say } = useApp();
  const units = useBoard((state) => state.units);
  const [count, setCount] = useState(1);
  const [typed, setTyped] = useState<number | null>(null);
  const [way, setWay] = useState<Way>(sideways(block));
  const along = ways[way];
  const own = along.reduce<number>((sum, part, axis) => sum + Math.abs(part) * sizeOf(block, axis), 0);
  const spacing = typed ?? Math.max(usualSpacing[units], own);
  const repeat = () => {
    let made: readonly string[] = [];
    const step: Vec3 = [along[0] * spacing, along[1] * spacing, along[2] * spacing];
    board.dispatch(
      words.edits.room.repeat(block.name.toLowerCase() || words.tools.kinds[block.kind]),
      (job) => {
        made = repeatBlock(job, block.id, count, step);
      },
    );
    const copies = selectionOf((kind) => (kind === 'block' ? [...made] : []));
    board.set({ selection: joined(board.getState().selection, copies) });
    say(words.tools.repeat.done(made.length));
  };
  return (
    <>
      <h3>{says.heading}</h3>
      <QuantityField
        label={says.count}
        value={String(count)}
        parse={(text) => readPlain(text, { what: says.count, low: 1, high: mostRepeated, whole: true })}
        onCommit={setCount}
      />
      <QuantityField
        label={says.spacing}
        value={formatLength(spacing, units)}
        parse={(text) => {
          const read = parseLength(text, units);
          return read.ok && read.value <= 0 ? { ok: false, message: says.spacingRefused } : read;
        }}
        onCommit={setTyped}
        onClear={() => setTyped(null)}
      />
      <Choice label={says.way} choices={choices} value={way} onChoose={setWay} />
      <Button className="button" onPress={repeat}>
        {says.act(count)}
      </Button>
    </>
  );
}

function sizeOf({ min, max }: Block, axis: number): number {
  return (max[axis] ?? 0) - (min[axis] ?? 0);
}

/** Away from a long block's side rather than its end. */
function sideways(block: Block): Way {
  return sizeOf(block, 0) <= sizeOf(block, 1) ? 'east' : 'north';
}
