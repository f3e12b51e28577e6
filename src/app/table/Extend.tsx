import { type FormEvent, useState } from 'react';
import { Button, Input, Label, TextField } from 'react-aria-components';
import { collarHeight } from '../../canvas/tools/hood.ts';
import type { Vec3 } from '../../graph/document.ts';
import { addHood, extendRun } from '../../graph/edits/index.ts';
import { schemeOf } from '../../graph/infer.ts';
import { genericHood } from '../../graph/templates.ts';
import type { TraceRow } from '../../graph/trace.ts';
import { formatLength, parseLength } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useApp, useBoard } from '../context.ts';
import { nodeName } from '../places.ts';
import { endOf, legEnd, type WayId, ways } from './extend.ts';

const says = words.table.extend;

interface ExtendProps {
  /** The row in hand. */
  readonly from: TraceRow | undefined;
  /** Told of the node that was made. */
  readonly onDrawn: (node: string) => void;
}

/** Places the hood where there is none, and draws leg after leg from the row in hand. */
export function Extend({ from, onDrawn }: ExtendProps) {
  const hasHood = useBoard((state) =>
    schemeOf(state.live, state.schemeId).nodes.some(({ role }) => role === 'hood'),
  );
  const [placed, setPlaced] = useState(false);
  if (hasHood || from) return <Leg from={from} onDrawn={onDrawn} autoFocus={placed} />;
  return (
    <PlaceHood
      onDrawn={(node) => {
        setPlaced(true);
        onDrawn(node);
      }}
    />
  );
}

interface LegProps extends ExtendProps {
  /** Right after the hood was placed here: the next thing to type is the first leg. */
  readonly autoFocus: boolean;
}

function Leg({ from, onDrawn, autoFocus }: LegProps) {
  const { board, say } = useApp();
  const route = useBoard((state) => state.solution.route);
  const units = useBoard((state) => state.units);
  const schemeId = useBoard((state) => state.schemeId);
  const [way, setWay] = useState<WayId>('up');
  const [text, setText] = useState('');
  const start = endOf(from);
  const node = start === undefined ? undefined : route.nodes.get(start);
  const branches = (node?.segments.length ?? 0) > 1 || (node?.kind === 'hood' && node.segments.length > 0);

  const draw = (event: FormEvent) => {
    event.preventDefault();
    if (start === undefined) return say(says.noRow);
    const length = parseLength(text, units);
    if (!length.ok) return say(length.message);
    const to = legEnd(route, start, way, length.value);
    if (!to) return say(says.noDuct);
    let made: string | null = null;
    board.dispatch(words.edits.route.drawDuct, (job) => {
      made = extendRun(job, schemeId, start, to)?.node ?? null;
    });
    if (made === null) return say(says.noLength);
    board.set({ selection: { nodes: [made], segments: [] } });
    onDrawn(made);
    setText('');
    say(says.drew(formatLength(length.value, units), nameOf(way)));
  };

  return (
    <form className="table-form" aria-label={says.draw} onSubmit={draw}>
      <span className="from">
        {branches ? says.branchFrom : says.goOnFrom} {start === undefined ? '…' : nodeName(route, start)}
      </span>
      <label>
        {says.direction}
        {/* biome-ignore lint/a11y/noAutofocus: the field that had the focus has just gone */}
        <select autoFocus={autoFocus} value={way} onChange={(event) => setWay(event.target.value as WayId)}>
          {ways.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <TextField className="inline-field" value={text} onChange={setText}>
        <Label>{says.length}</Label>
        <Input spellCheck={false} autoComplete="off" placeholder={formatLength(1.016, units)} />
      </TextField>
      <Button type="submit" className="button">
        {says.drawLeg}
      </Button>
    </form>
  );
}

function nameOf(way: WayId): string {
  return ways.find(({ id }) => id === way)?.name.toLowerCase() ?? way;
}

function PlaceHood({ onDrawn }: Pick<ExtendProps, 'onDrawn'>) {
  const { board, say } = useApp();
  const units = useBoard((state) => state.units);
  const job = useBoard((state) => state.job);
  const schemeId = useBoard((state) => state.schemeId);
  const [texts, setTexts] = useState<readonly [string, string, string]>(() => [
    formatLength(0, units),
    formatLength(0, units),
    formatLength(collarHeight(job), units),
  ]);
  const place = (event: FormEvent) => {
    event.preventDefault();
    const at: Vec3 = [0, 0, 0];
    for (const [axis, text] of texts.entries()) {
      const read = parseLength(text, units, { negative: true });
      if (!read.ok) return say(read.message);
      at[axis] = read.value;
    }
    let made: string | null = null;
    board.dispatch(words.edits.route.placeHood, (draft) => {
      made = addHood(draft, schemeId, at, job.hoods.length > 0 ? undefined : genericHood('h1'));
    });
    if (made === null) return;
    board.set({ selection: { nodes: [made], segments: [] } });
    onDrawn(made);
    say(says.hoodPlaced);
  };
  return (
    <form className="table-form" aria-label={says.placeTheHood} onSubmit={place}>
      {([says.east, says.north, says.collarHeight] as const).map((name, axis) => (
        <TextField
          key={name}
          className="inline-field"
          value={texts[axis] ?? ''}
          onChange={(text) =>
            setTexts(texts.map((old, i) => (i === axis ? text : old)) as [string, string, string])
          }
        >
          <Label>{name}</Label>
          <Input spellCheck={false} autoComplete="off" />
        </TextField>
      ))}
      <Button type="submit" className="button">
        {says.placeHood}
      </Button>
    </form>
  );
}
