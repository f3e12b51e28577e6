import { useMemo, useState } from 'react';
import { Button, Checkbox, CheckboxGroup, Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { type Comparison, compareSchemes } from '../../advice/compare/compare.ts';
import { causes } from '../../advice/compare/figures.ts';
import type { SchemeGoal } from '../../advice/compare/standing.ts';
import { pricesAreInvented } from '../../advice/cost/price.ts';
import { RouteDrawing } from '../../canvas/route-svg.tsx';
import { sheetTitles } from '../../canvas/view.ts';
import { formatFlow, formatPressure } from '../../units/index.ts';
import { useAdvice, useApp, useBoard, useUi } from '../context.ts';
import { Icon } from '../icons.tsx';
import { GoalChooser } from '../proposals/GoalChooser.tsx';
import { BudgetBar, BudgetKey, BudgetPatterns } from './BudgetBar.tsx';
import { WhatWouldWin } from './Catching.tsx';
import './compare.css';
import { shownSheets } from './drawings.ts';

/** Schemes side by side over the whole window; closing it leads back to the desk as it was. */
export default function CompareView() {
  const { ui } = useApp();
  const open = useUi((state) => state.comparing);
  const close = () => ui.setState({ comparing: false });
  return (
    <ModalOverlay className="compare-overlay" isOpen={open} onOpenChange={(next) => !next && close()}>
      <Modal className="compare-modal">
        <Dialog className="compare" aria-label="Compare schemes">
          <Page close={close} />
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

/** Columns that a page has room for. */
const widest = 4;

function Page({ close }: { close: () => void }) {
  const job = useBoard((state) => state.job);
  const speed = useBoard((state) => state.speed);
  const { goal: wanted } = useAdvice();
  const goal: SchemeGoal = wanted === 'opening' ? 'air' : wanted;
  const [chosen, setChosen] = useState<readonly string[]>(() =>
    job.schemes.slice(0, widest).map(({ id }) => id),
  );
  const ids = job.schemes.map(({ id }) => id).filter((id) => chosen.includes(id));
  const columns = ids.join();
  const comparison = useMemo(() => {
    const asked = columns === '' ? [] : columns.split(',');
    return asked.length < 2 ? null : compareSchemes(job, asked, { speed, goal });
  }, [job, columns, speed, goal]);
  return (
    <>
      <header className="compare-bar">
        <Heading slot="title">Compare schemes</Heading>
        <GoalChooser />
        {job.schemes.length > 2 && (
          <CheckboxGroup
            className="compare-choice"
            aria-label="Schemes to compare"
            value={ids}
            onChange={(next) => next.length >= 2 && next.length <= widest && setChosen(next)}
          >
            {job.schemes.map(({ id, name }) => (
              <Checkbox key={id} value={id} className="check">
                <span className="check-box" aria-hidden="true">
                  <Icon name="tick" size={12} />
                </span>
                {name}
              </Checkbox>
            ))}
          </CheckboxGroup>
        )}
        <span className="compare-buttons">
          <Button className="button" onPress={() => window.print()}>
            Print
          </Button>
          <Button className="button primary" autoFocus onPress={close}>
            Back to the desk
          </Button>
        </span>
      </header>
      {comparison ? (
        <Sheet comparison={comparison} goal={goal} />
      ) : (
        <p className="compare-empty">Choose at least two schemes.</p>
      )}
    </>
  );
}

function Sheet({ comparison, goal }: { comparison: Comparison; goal: SchemeGoal }) {
  const job = useBoard((state) => state.job);
  const units = useBoard((state) => state.units);
  const index = useBoard((state) => state.speed);
  const { schemes, rows, recommendation, speed, need } = comparison;
  const sheets = useMemo(
    () =>
      shownSheets(
        job,
        schemes.map(({ solution }) => solution.route),
      ),
    [job, schemes],
  );
  const most = Math.max(
    ...schemes.map(({ budget }) => [...budget.values()].reduce((a, b) => a + Math.max(0, b), 0)),
  );
  const present = causes.filter((cause) => schemes.some(({ budget }) => (budget.get(cause) ?? 0) > 0));
  const winner = schemes.find(({ id }) => id === recommendation.winner);
  const losers = schemes.filter(({ id }) => winner && id !== winner.id);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls is reached by keys
    <section className="compare-sheet" aria-label="Comparison" tabIndex={0}>
      <p className="compare-title">
        <strong>{job.title}</strong> at {speed}; the cooktop asks for {formatFlow(need, units)}.
      </p>
      <BudgetPatterns />
      <table className="compare-table">
        <thead>
          <tr>
            <td />
            {schemes.map(({ id, name }) => (
              <th key={id} scope="col" data-winner={id === recommendation.winner || undefined}>
                <span className="compare-name">{name}</span>
                {id === recommendation.winner && (
                  <span className="compare-mark">
                    <Icon name="tick" size={13} /> recommended
                  </span>
                )}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {sheets.map(({ sheet, bounds }) => (
            <tr key={sheet}>
              <th scope="row">
                {sheetTitles[sheet].name}
                <small>{sheetTitles[sheet].looking}</small>
              </th>
              {schemes.map(({ id, name, solution }) => (
                <td key={id}>
                  <RouteDrawing
                    className="compare-drawing"
                    job={job}
                    route={solution.route}
                    sheet={sheet}
                    bounds={bounds}
                    label={`${name}, ${sheetTitles[sheet].name.toLowerCase()}`}
                  />
                </td>
              ))}
            </tr>
          ))}
          {rows.map((row) => (
            <tr key={row.id} data-differs={row.differs || undefined}>
              <th scope="row">{row.title}</th>
              {row.cells.map((cell, i) => (
                <td key={schemes[i]?.id} data-best={cell.best || undefined}>
                  <span className="compare-value">
                    {cell.best && <Icon name="tick" size={13} />}
                    {cell.best && <span className="unseen">best: </span>}
                    {cell.text}
                    {cell.short && <span className="compare-short">{shortWord(row.id)}</span>}
                  </span>
                  {cell.note && <small>{cell.note}</small>}
                </td>
              ))}
            </tr>
          ))}
          <tr className="compare-budget">
            <th scope="row">
              Where the pressure goes
              <BudgetKey causes={present} />
            </th>
            {schemes.map((scheme) => (
              <td key={scheme.id}>
                {scheme.solved ? (
                  <>
                    <BudgetBar scheme={scheme} most={most} units={units} />
                    <ul className="budget-values">
                      {present.map((cause) => (
                        <li key={cause}>
                          <span>{cause}</span>
                          <span>{formatPressure(scheme.budget.get(cause) ?? 0, units)}</span>
                        </li>
                      ))}
                    </ul>
                  </>
                ) : (
                  scheme.reason
                )}
              </td>
            ))}
          </tr>
          <tr className="compare-findings">
            <th scope="row">Findings</th>
            {schemes.map(({ id, findings }) => (
              <td key={id}>
                <ul>
                  {findings.slice(0, told).map((finding) => (
                    <li key={finding.id} data-severity={finding.severity}>
                      <strong>{finding.severity}</strong> <span>{finding.message}</span>
                    </li>
                  ))}
                  {findings.length > told && <li>and {findings.length - told} more on the desk</li>}
                  {findings.length === 0 && <li>none</li>}
                </ul>
              </td>
            ))}
          </tr>
        </tbody>
      </table>
      <div className="compare-verdict">
        <div>
          <h2>{winner ? `Recommended: ${winner.name}` : 'No recommendation'}</h2>
          <ul>
            {recommendation.because.map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
        </div>
        {winner && (
          <div>
            <h2>What would make another win</h2>
            {losers.map((loser) => (
              <WhatWouldWin
                key={loser.id}
                loser={loser}
                winner={winner}
                speed={index}
                speedName={speed}
                goal={goal}
              />
            ))}
          </div>
        )}
      </div>
      <p className="compare-foot">
        ✓ marks the best of a row where the schemes differ. {pricesAreInvented} A planning estimate: local
        code, the hood's instructions and a licensed installer decide.
      </p>
    </section>
  );
}

/** Findings that are told in full. */
const told = 3;

function shortWord(row: string): string {
  return row === 'house' ? ' beyond the limit' : ' short';
}
