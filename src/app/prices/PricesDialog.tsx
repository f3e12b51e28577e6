import { type CostLine, costOf, currency, formatMoney, pricesAreInvented } from '../../advice/cost/price.ts';
import { amountOf, unitOfPart } from '../../advice/parts/amount.ts';
import { type Part, partWords } from '../../advice/parts.ts';
import {
  formatArea,
  formatFlow,
  formatLength,
  formatNumber,
  parseLength,
  type System,
} from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useApp, useBoard, useUi } from '../context.ts';
import { QuantityField } from '../controls.tsx';
import { DialogBox, DialogFoot, DialogScroll } from '../DialogBox.tsx';
import { Icon } from '../icons.tsx';
import { readPlain, within } from '../kitchen/reading.ts';
import './prices.css';

const says = words.prices.dialog;

/** What has to be bought for the scheme, at prices that can be replaced by one's own. */
export default function PricesDialog() {
  const { ui } = useApp();
  const open = useUi((state) => state.prices);
  const close = () => ui.setState({ prices: false });
  return (
    <DialogBox width="wide" title={says.heading} isOpen={open} onClose={close}>
      <PriceList />
      <DialogFoot onLeave={close} />
    </DialogBox>
  );
}

function PriceList() {
  const job = useBoard((state) => state.job);
  const schemeId = useBoard((state) => state.schemeId);
  const units = useBoard((state) => state.units);
  const { lines, total, unpriced } = costOf(job, schemeId);
  const name = job.schemes.find(({ id }) => id === schemeId)?.name ?? '';
  if (lines.length === 0)
    return (
      <div className="prices-empty">
        <h3>{says.empty.heading}</h3>
        <p>{says.empty.lead(name)}</p>
        <p>{pricesAreInvented}</p>
      </div>
    );
  return (
    <>
      <p className="dialog-lead">{says.lead(name, pricesAreInvented)}</p>
      <PriceTable lines={lines} total={total} unpriced={unpriced} units={units} />
    </>
  );
}

interface PriceTableProps {
  readonly lines: readonly CostLine[];
  readonly total: number;
  /** How many lines have no price. */
  readonly unpriced: number;
  readonly units: System;
}

function PriceTable({ lines, total, unpriced, units }: PriceTableProps) {
  return (
    <DialogScroll label={says.parts}>
      <table className="prices">
        <thead>
          <tr>
            <th scope="col">{says.part}</th>
            <th scope="col">{says.quantity}</th>
            <th scope="col">{says.stock}</th>
            <th scope="col">{says.price}</th>
            <th scope="col">{says.amount}</th>
            <td />
          </tr>
        </thead>
        <tbody>
          {lines.map((line) => (
            <Line key={line.part.key} line={line} units={units} />
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">{unpriced > 0 ? says.allPartsUnpriced(unpriced) : says.allParts}</th>
            <td />
            <td />
            <td />
            <td>{formatMoney(total)}</td>
            <td />
          </tr>
        </tfoot>
      </table>
    </DialogScroll>
  );
}

function Line({ line, units }: { line: CostLine; units: System }) {
  const { board } = useApp();
  const { part, price, amount } = line;
  const what = partWords(part, units);
  const { per } = unitOfPart(part, units);
  const perUnit = `${currency} ${says.per[part.unit](units)}`;
  return (
    <tr>
      <th scope="row">{what}</th>
      <td>{quantity(part, units)}</td>
      <td>{part.stock && <StockField part={part} stock={part.stock} units={units} what={what} />}</td>
      <td>
        <QuantityField
          label={`${perUnit}, ${what}`}
          value={price === null ? '' : formatNumber(price.each * per, 2)}
          parse={(text) =>
            text.trim() === ''
              ? { ok: true, value: -1 }
              : readPlain(text, { what: says.priceRange, low: 0, high: 1e6, unit: /^\s*\$/ })
          }
          onCommit={(value) =>
            board.dispatch(words.edits.job.price, (job) => {
              if (value < 0) delete job.prices[part.key];
              else job.prices[part.key] = value / per;
            })
          }
        />
        <small>{perUnit}</small>
      </td>
      <td>{amount === null ? '–' : formatMoney(amount)}</td>
      <td>
        {price?.from === 'yours' ? (
          <span className="prices-yours">
            <Icon name="tick" size={12} /> {says.yours}
          </span>
        ) : (
          <span className="prices-example">{price === null ? says.none : says.example}</span>
        )}
      </td>
    </tr>
  );
}

/** The length that duct is sold in; an empty field goes back to the usual one. */
function StockField(props: { part: Part; stock: NonNullable<Part['stock']>; units: System; what: string }) {
  const { part, stock, units, what } = props;
  const { board } = useApp();
  const own = useBoard((state) => state.job.stock?.[part.key] !== undefined);
  return (
    <>
      <QuantityField
        label={says.stockOf(what)}
        value={formatLength(stock.length, units)}
        parse={(text) =>
          text.trim() === ''
            ? { ok: true, value: -1 }
            : within(parseLength(text, units), leastStock, mostStock, says.stockRange, (metres) =>
                formatLength(metres, units),
              )
        }
        onCommit={(value) =>
          board.dispatch(words.edits.job.stock, (job) => {
            const { [part.key]: _, ...others } = job.stock ?? {};
            const next = value < 0 ? others : { ...others, [part.key]: value };
            if (Object.keys(next).length > 0) job.stock = next;
            else delete job.stock;
          })
        }
      />
      {own && <small className="prices-yours">{says.yours}</small>}
    </>
  );
}

/** What the format takes for a stock length, m. */
const [leastStock, mostStock] = [0.3, 30];

function quantity(part: Part, units: System): string {
  if (part.kind === 'make-up air') {
    const size = part.size ?? 0;
    return `1, ${part.row === 'fan' ? formatFlow(size, units) : formatArea(size, units)}`;
  }
  const { figure, unit } = amountOf(part, units);
  return `${figure} ${unit}`;
}
