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
import { useBoard } from '../context.ts';
import { QuantityField } from '../controls.tsx';
import { Choice } from '../kitchen/fields.tsx';
import { above, readPercent, readPlain } from '../kitchen/reading.ts';

type Sheet = NonNullable<InlinePart['user']>;
type How = 'catalogue' | 'c' | 'loss' | 'length';

const ways: readonly { id: How; name: string; what: string }[] = [
  { id: 'catalogue', name: 'Catalogue', what: 'The figures of the catalogue row.' },
  { id: 'c', name: 'Data sheet: loss coefficient', what: 'C on the velocity pressure in the duct.' },
  { id: 'loss', name: 'Data sheet: loss at a flow', what: 'A pressure loss measured at one flow.' },
  { id: 'length', name: 'Data sheet: equivalent length', what: 'As much as so much of this duct.' },
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
  const sheet = (figures: Sheet) => onChange('change part data', { user: figures });
  const free = row && (row.loss.kind === 'free area' || row.loss.kind === 'plate') ? row.loss.default : null;
  return (
    <div className="part-data">
      <Choice
        label="Its loss is from"
        choices={row ? ways : ways.slice(1)}
        value={how}
        onChoose={(chosen) =>
          onChange('change part data', { user: chosen === 'catalogue' ? undefined : starts[chosen] })
        }
      />
      {!user && free !== null && (
        <QuantityField
          label="Free area"
          value={`${formatTrimmed(100 * (part.freeArea ?? free), 1)} %`}
          parse={(text) => above(readPercent(text, 'Free area'), 'Something must be open: a share above 0.')}
          onCommit={(freeArea) => onChange('change free area', { freeArea })}
        />
      )}
      {user && 'c' in user && (
        <QuantityField
          label="C on the duct"
          value={formatTrimmed(user.c, 3)}
          parse={(text) => readPlain(text, { what: 'A loss coefficient', low: 0, high: 1000 })}
          onCommit={(c) => sheet({ c })}
        />
      )}
      {user && 'loss' in user && (
        <div className="field-grid">
          <QuantityField
            label="Loss"
            value={formatPressure(user.loss, units)}
            parse={(text) => above(parsePressure(text, units), 'A part takes pressure: a loss above 0.')}
            onCommit={(loss) => sheet({ ...user, loss })}
          />
          <QuantityField
            label="at a flow of"
            value={formatFlow(user.atFlow, units)}
            parse={(text) => above(parseFlow(text, units), 'A flow above 0.')}
            onCommit={(atFlow) => sheet({ ...user, atFlow })}
          />
        </div>
      )}
      {user && 'equivalentLength' in user && (
        <QuantityField
          label="As much as this duct, of"
          value={formatRun(user.equivalentLength, units)}
          parse={(text) => parseQuantity('run', text, units)}
          onCommit={(equivalentLength) => sheet({ equivalentLength })}
        />
      )}
    </div>
  );
}
