import '../charts/charts.css';
import './parts-list.css';
import { Button, Disclosure, DisclosurePanel, Heading } from 'react-aria-components';
import { type CostLine, formatMoney, pricesAreInvented } from '../../advice/cost/price.ts';
import { amountOf, stockWords, weightAmount } from '../../advice/parts/amount.ts';
import { partSources } from '../../advice/parts/sources.ts';
import { type Totals, totalsOf } from '../../advice/parts/totals.ts';
import { partWords } from '../../advice/parts.ts';
import { sourceWords } from '../../graph/derive/text.ts';
import { schemeOf } from '../../graph/infer.ts';
import { formatPercent, formatRun, type System } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useApp, useBoard } from '../context.ts';
import { IconButton } from '../controls.tsx';
import { useFocusBack } from '../focus-back.ts';
import { Icon } from '../icons.tsx';
import { usePointing } from '../pointing.ts';
import { CuttingPlans } from './CuttingPlans.tsx';
import { SaveMenu } from './SaveMenu.tsx';

const says = words.partsList.dock;

/** What has to be bought and how the duct is cut, under the sheets: each points at the other. */
export default function PartsDock() {
  const { ui } = useApp();
  const box = useFocusBack();
  const job = useBoard((state) => state.job);
  const schemeId = useBoard((state) => state.schemeId);
  const units = useBoard((state) => state.units);
  const totals = totalsOf(job, schemeId);
  const { lines } = totals.cost;
  return (
    <section ref={box} tabIndex={-1} className="parts-dock" aria-label={says.name}>
      <header className="table-bar">
        <Heading level={2}>{says.heading(schemeOf(job, schemeId).name)}</Heading>
        {lines.length > 0 && (
          <>
            <Button className="button" onPress={() => ui.setState({ prices: true })}>
              {says.prices}
            </Button>
            <SaveMenu />
          </>
        )}
        <IconButton
          icon="close"
          label={says.close}
          placement="left"
          onPress={() => ui.setState({ parts: false })}
        />
      </header>
      {lines.length > 0 ? (
        <div className="parts-body">
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls is reached by keys */}
          <section aria-label={says.list} tabIndex={0}>
            <List totals={totals} units={units} />
            <p className="parts-note">
              {pricesAreInvented} {words.partsList.caution}
              {totals.unweighed > 0 && ` ${says.unweighed(totals.unweighed)}`}
            </p>
            <Sources />
          </section>
          <section aria-labelledby="parts-cutting">
            <h3 id="parts-cutting" className="parts-head">
              {says.cutting}
              {totals.bought > 0 && (
                <small>
                  {says.duct(
                    formatRun(totals.run, units),
                    formatRun(totals.bought, units),
                    formatPercent(totals.waste),
                  )}
                </small>
              )}
            </h3>
            <CuttingPlans />
          </section>
        </div>
      ) : (
        <div className="parts-body empty-state">
          <div>
            <h2>{says.emptyHeading}</h2>
            {says.empty.map((sentence) => (
              <p key={sentence}>{sentence}</p>
            ))}
          </div>
        </div>
      )}
    </section>
  );
}

/** The rules behind the list, for whoever asks. */
function Sources() {
  const job = useBoard((state) => state.job);
  const schemeId = useBoard((state) => state.schemeId);
  return (
    <Disclosure className="source-note parts-sources">
      <Heading level={3}>
        <Button slot="trigger">
          <Icon name="down" size={14} />
          {words.partsList.sources.title}
        </Button>
      </Heading>
      <DisclosurePanel>
        <ul>
          {partSources(job, schemeId).map(({ what, source, sourceKind, notes }) => (
            <li key={what}>
              {words.partsList.sources.line(what, source, sourceWords[sourceKind])} {notes.join(' ')}
            </li>
          ))}
        </ul>
      </DisclosurePanel>
    </Disclosure>
  );
}

function List({ totals: { cost, weight }, units }: { totals: Totals; units: System }) {
  const weighed = weightAmount(weight, units);
  return (
    <table className="chart-table">
      <thead>
        <tr>
          <th scope="col">{says.part}</th>
          <th scope="col">{says.run}</th>
          <th scope="col">{says.buy}</th>
          <th scope="col">{says.weight(weighed.unit)}</th>
          <th scope="col">{says.amount}</th>
        </tr>
      </thead>
      <tbody>
        {cost.lines.map((line) => (
          <Line key={line.part.key} line={line} units={units} />
        ))}
      </tbody>
      <tfoot>
        <tr className="sum">
          <th scope="row">{cost.unpriced > 0 ? says.allUnpriced(cost.unpriced) : says.all}</th>
          <td />
          <td />
          <td>{weighed.figure}</td>
          <td>{formatMoney(cost.total)}</td>
        </tr>
      </tfoot>
    </table>
  );
}

function Line({ line: { part, amount }, units }: { line: CostLine; units: System }) {
  const { nodes, segments } = part;
  const { lit, point, leave, choose } = usePointing({ nodes, segments });
  const { figure, unit } = amountOf(part, units);
  const placed = nodes.length + segments.length > 0;
  const what = partWords(part, units);
  return (
    <tr
      data-lit={(placed && lit) || undefined}
      {...(placed ? { onPointerEnter: point, onPointerLeave: leave } : {})}
    >
      <th scope="row">
        {placed ? (
          <button type="button" className="place-button" onFocus={point} onBlur={leave} onClick={choose}>
            {what}
          </button>
        ) : (
          what
        )}
      </th>
      <td>
        {figure} {unit}
      </td>
      <td>{stockWords(part, units)}</td>
      <td>{weightAmount(part.weight, units).figure}</td>
      <td>{amount === null ? '–' : formatMoney(amount)}</td>
    </tr>
  );
}
