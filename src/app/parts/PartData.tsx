import type { InlinePart } from '../../graph/document.ts';
import { findInline } from '../../hydraulics/catalogue.ts';
import {
  formatFlow,
  formatPressure,
  formatRun,
  formatTrimmed,
  parseFlow,
  parsePressure,
  parseQuantity,
} from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useBoard } from '../context.ts';
import { QuantityField } from '../controls.tsx';
import { Choice } from '../kitchen/fields.tsx';
import { above, readPercent, readPlain } from '../kitchen/reading.ts';

const says = words.parts.data;

type Sheet = NonNullable<InlinePart['user']>;
type How = 'catalogue' | 'c' | 'loss' | 'length';

const ways: readonly { id: How; name: string; what: string }[] = [
  { id: 'catalogue', name: says.kinds.catalogue, what: says.kinds.catalogueMeans },
  { id: 'c', name: says.kinds.coefficient, what: says.kinds.coefficientMeans },
  { id: 'loss', name: says.kinds.loss, what: says.kinds.lossMeans },
  { id: 'length', name: says.kinds.length, what: says.kinds.lengthMeans },
];

/** What a data sheet gives to start from, until its own figures are typed. */
const starts: Readonly<Record<Exclude<How, 'catalogue'>, Sheet>> = {
  c: { c: 1 },
  loss: { loss: 25, atFlow: 0.15 },
  length: { equivalentLength: 3 },
};

function howOf(user: InlinePart['user']): How {
  if (!user) return 'catalogue';
  if ('c' in user) return 'c';
  return 'loss' in user ? 'loss' : 'length';
}

/** Fields of a part; one that is undefined is taken away. */
export type ChangedPart = { readonly [F in keyof InlinePart]?: InlinePart[F] | undefined };

interface PartDataProps {
  readonly part: InlinePart;
  readonly onChange: (label: string, fields: ChangedPart) => void;
}

/** Where the loss of a part in line comes from: its catalogue row with what may be set, or a data sheet. */
export function PartData({ part, onChange }: PartDataProps) {
  const units = useBoard((state) => state.units);
  const row = findInline(part.kind);
  const { user } = part;
  const how = howOf(user);
  const sheet = (figures: Sheet) => onChange(words.edits.parts.data, { user: figures });
  const free = row && (row.loss.kind === 'free area' || row.loss.kind === 'plate') ? row.loss.default : null;
  return (
    <div className="part-data">
      <Choice
        label={says.from}
        choices={row ? ways : ways.slice(1)}
        value={how}
        onChoose={(chosen) =>
          onChange(words.edits.parts.data, { user: chosen === 'catalogue' ? undefined : starts[chosen] })
        }
      />
      {!user && free !== null && (
        <QuantityField
          label={says.freeArea}
          value={`${formatTrimmed(100 * (part.freeArea ?? free), 1)} %`}
          parse={(text) => above(readPercent(text, says.freeArea), says.freeAreaRefused)}
          onCommit={(freeArea) => onChange(words.edits.parts.freeArea, { freeArea })}
        />
      )}
      {user && 'c' in user && (
        <QuantityField
          label={says.c}
          value={formatTrimmed(user.c, 3)}
          parse={(text) => readPlain(text, { what: says.cRange, low: 0, high: 1000 })}
          onCommit={(c) => sheet({ c })}
        />
      )}
      {user && 'loss' in user && (
        <div className="field-grid">
          <QuantityField
            label={says.loss}
            value={formatPressure(user.loss, units)}
            parse={(text) => above(parsePressure(text, units), says.lossRefused)}
            onCommit={(loss) => sheet({ ...user, loss })}
          />
          <QuantityField
            label={says.atFlow}
            value={formatFlow(user.atFlow, units)}
            parse={(text) => above(parseFlow(text, units), says.flowRefused)}
            onCommit={(atFlow) => sheet({ ...user, atFlow })}
          />
        </div>
      )}
      {user && 'equivalentLength' in user && (
        <QuantityField
          label={says.asMuchAs}
          value={formatRun(user.equivalentLength, units)}
          parse={(text) => parseQuantity('run', text, units)}
          onCommit={(equivalentLength) => sheet({ equivalentLength })}
        />
      )}
    </div>
  );
}
