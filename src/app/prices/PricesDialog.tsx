import { Button, Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { type CostLine, costOf, currency, formatMoney, pricesAreInvented } from '../../advice/cost/price.ts';
import { partWords } from '../../advice/parts.ts';
import { formatArea, formatFlow, formatNumber, formatRun, type System } from '../../units/index.ts';
import { useApp, useBoard, useUi } from '../context.ts';
import { QuantityField } from '../controls.tsx';
import { Icon } from '../icons.tsx';
import { readPlain } from '../kitchen/reading.ts';
import './prices.css';

/** What has to be bought for the scheme, at prices that can be replaced by one's own. */
export default function PricesDialog() {
  const { ui } = useApp();
  const open = useUi((state) => state.prices);
  const close = () => ui.setState({ prices: false });
  return (
    <ModalOverlay className="overlay" isOpen={open} isDismissable onOpenChange={(next) => !next && close()}>
      <Modal className="modal prices-modal">
        <Dialog className="dialog">
          <PriceList />
          <div className="dialog-buttons">
            <Button className="button primary" autoFocus onPress={close}>
              Close
            </Button>
          </div>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

function PriceList() {
  const job = useBoard((state) => state.job);
  const schemeId = useBoard((state) => state.schemeId);
  const units = useBoard((state) => state.units);
  const { lines, total, unpriced } = costOf(job, schemeId);
  const name = job.schemes.find(({ id }) => id === schemeId)?.name;
  return (
    <>
      <Heading slot="title">Parts and prices</Heading>
      <p className="prices-lead">
        {name}. {pricesAreInvented} An empty field goes back to the example.
      </p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls is reached by keys */}
      <section className="prices-scroll" aria-label="Parts" tabIndex={0}>
        <table className="prices">
          <thead>
            <tr>
              <th scope="col">Part</th>
              <th scope="col">Quantity</th>
              <th scope="col">Price</th>
              <th scope="col">Amount</th>
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
              <th scope="row">All parts{unpriced > 0 ? `, ${unpriced} of them without a price` : ''}</th>
              <td />
              <td />
              <td>{formatMoney(total)}</td>
              <td />
            </tr>
          </tfoot>
        </table>
      </section>
    </>
  );
}

function Line({ line, units }: { line: CostLine; units: System }) {
  const { board } = useApp();
  const { part, price, amount } = line;
  const words = partWords(part, units);
  const perUnit =
    part.unit === 'm' ? metresPerUnit(units) : part.unit === 'm2' ? squareMetresPerUnit(units) : 1;
  const each = price === null ? '' : formatNumber(price.each * perUnit, 2);
  return (
    <tr>
      <th scope="row">{words}</th>
      <td>{quantity(line, units)}</td>
      <td>
        <QuantityField
          label={`${currency} ${unitWord(part.unit, units)}, ${words}`}
          value={each}
          parse={(text) =>
            text.trim() === ''
              ? { ok: true, value: -1 }
              : readPlain(text, { what: 'A price', low: 0, high: 1e6, unit: /^\s*\$/ })
          }
          onCommit={(value) =>
            board.dispatch('change price', (job) => {
              if (value < 0) delete job.prices[part.key];
              else job.prices[part.key] = value / perUnit;
            })
          }
        />
        <small>
          {currency} {unitWord(part.unit, units)}
        </small>
      </td>
      <td>{amount === null ? '–' : formatMoney(amount)}</td>
      <td>
        {price?.from === 'yours' ? (
          <span className="prices-yours">
            <Icon name="tick" size={12} /> yours
          </span>
        ) : (
          <span className="prices-example">example</span>
        )}
      </td>
    </tr>
  );
}

function quantity({ part }: CostLine, units: System): string {
  if (part.unit === 'm') return formatRun(part.quantity, units);
  if (part.unit === 'm2')
    return units === 'imperial'
      ? `${formatNumber(part.quantity / squareMetresPerUnit(units), 1)} sq ft`
      : `${formatNumber(part.quantity, 2)} m²`;
  if (part.kind !== 'make-up air') return String(part.quantity);
  return `1, ${part.row === 'fan' ? formatFlow(part.size ?? 0, units) : formatArea(part.size ?? 0, units)}`;
}

function unitWord(unit: 'm' | 'm2' | 'piece', units: System): string {
  if (unit === 'piece') return 'each';
  if (unit === 'm') return units === 'imperial' ? 'a foot' : 'a metre';
  return units === 'imperial' ? 'a square foot' : 'a square metre';
}

const foot = 0.3048;
const metresPerUnit = (units: System) => (units === 'imperial' ? foot : 1);
const squareMetresPerUnit = (units: System) => (units === 'imperial' ? foot * foot : 1);
