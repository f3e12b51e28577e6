import { Button, Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { type CostLine, costOf, currency, formatMoney, pricesAreInvented } from '../../advice/cost/price.ts';
import { partWords } from '../../advice/parts.ts';
import { formatArea, formatFlow, formatNumber, formatRun, type System } from '../../units/index.ts';
import { useApp, useBoard, useUi } from '../context.ts';
import { QuantityField } from '../controls.tsx';
import { Icon } from '../icons.tsx';
import { readPlain } from '../kitchen/reading.ts';
import './prices.css';
import { words } from '../../words/index.ts';

const says = words.prices.dialog;

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
              {words.shell.dialog.close}
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
      <Heading slot="title">{says.heading}</Heading>
      <p className="prices-lead">{says.lead(name ?? '', pricesAreInvented)}</p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls is reached by keys */}
      <section className="prices-scroll" aria-label={says.parts} tabIndex={0}>
        <table className="prices">
          <thead>
            <tr>
              <th scope="col">{says.part}</th>
              <th scope="col">{says.quantity}</th>
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
  const what = partWords(part, units);
  const perUnit =
    part.unit === 'm' ? metresPerUnit(units) : part.unit === 'm2' ? squareMetresPerUnit(units) : 1;
  const each = price === null ? '' : formatNumber(price.each * perUnit, 2);
  return (
    <tr>
      <th scope="row">{what}</th>
      <td>{quantity(line, units)}</td>
      <td>
        <QuantityField
          label={`${currency} ${unitWord(part.unit, units)}, ${what}`}
          value={each}
          parse={(text) =>
            text.trim() === ''
              ? { ok: true, value: -1 }
              : readPlain(text, { what: says.priceRange, low: 0, high: 1e6, unit: /^\s*\$/ })
          }
          onCommit={(value) =>
            board.dispatch(words.edits.job.price, (job) => {
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
            <Icon name="tick" size={12} /> {says.yours}
          </span>
        ) : (
          <span className="prices-example">{says.example}</span>
        )}
      </td>
    </tr>
  );
}

function quantity({ part }: CostLine, units: System): string {
  if (part.unit === 'm') return formatRun(part.quantity, units);
  if (part.unit === 'm2')
    return units === 'imperial'
      ? says.squareFeet(formatNumber(part.quantity / squareMetresPerUnit(units), 1))
      : says.squareMetres(formatNumber(part.quantity, 2));
  if (part.kind !== 'make-up air') return String(part.quantity);
  return `1, ${part.row === 'fan' ? formatFlow(part.size ?? 0, units) : formatArea(part.size ?? 0, units)}`;
}

function unitWord(unit: 'm' | 'm2' | 'piece', units: System): string {
  if (unit === 'piece') return says.each;
  if (unit === 'm') return units === 'imperial' ? says.aFoot : says.aMetre;
  return units === 'imperial' ? says.aSquareFoot : says.aSquareMetre;
}

const foot = 0.3048;
const metresPerUnit = (units: System) => (units === 'imperial' ? foot : 1);
const squareMetresPerUnit = (units: System) => (units === 'imperial' ? foot * foot : 1);
