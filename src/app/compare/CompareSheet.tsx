import { type CSSProperties, useMemo } from 'react';
import type { Comparison } from '../../advice/compare/compare.ts';
import type { SchemeGoal } from '../../advice/compare/standing.ts';
import { pricesAreInvented } from '../../advice/cost/price.ts';
import { formatFlow } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useBoard } from '../context.ts';
import { Icon } from '../icons.tsx';
import { BudgetBar, BudgetFigures, BudgetPatterns } from './BudgetBar.tsx';
import { WhatWouldWin } from './Catching.tsx';
import { Drawings } from './Drawings.tsx';
import { shownSheets } from './drawings.ts';

const says = words.compare.sheet;

/** The comparison itself: what is printed. */
export function CompareSheet({ comparison, goal }: { comparison: Comparison; goal: SchemeGoal }) {
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
  const winner = schemes.find(({ id }) => id === recommendation.winner);
  const losers = schemes.filter(({ id }) => winner && id !== winner.id);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls is reached by keys
    <section className="compare-sheet" style={fitting(rows.length)} aria-label={says.label} tabIndex={0}>
      <p className="compare-title">
        <strong>{job.title}</strong> {says.at(speed, formatFlow(need, units))}
      </p>
      <div className="compare-verdict">
        <h2>{winner ? says.winner(winner.name) : says.noWinner}</h2>
        {recommendation.danger && (
          <p className="caution compare-danger">
            <Icon name="caution" size={15} />
            {recommendation.danger}
          </p>
        )}
        <ul>
          {recommendation.because.map((words) => (
            <li key={words}>{words}</li>
          ))}
        </ul>
        {winner && (
          <div>
            <h3>{says.another}</h3>
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
                    <Icon name="tick" size={13} /> {says.recommended}
                  </span>
                )}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          <tr className="compare-drawn">
            <th scope="row">
              {says.drawn}
              <small>{says.oneScale}</small>
            </th>
            {schemes.map(({ id, name, solution }) => (
              <td key={id}>
                <Drawings name={name} job={job} route={solution.route} sheets={sheets} units={units} />
              </td>
            ))}
          </tr>
          {rows.map((row) => (
            <tr key={row.id} data-differs={row.differs || undefined}>
              <th scope="row">{row.title}</th>
              {row.cells.map((cell, i) => (
                <td key={schemes[i]?.id} data-best={cell.best || undefined}>
                  <span className="compare-value">
                    {cell.best && <Icon name="tick" size={13} />}
                    {cell.best && <span className="unseen">{says.best} </span>}
                    {cell.text}
                    {cell.short && (
                      <span className="compare-short">
                        {row.id === 'house'
                          ? says.beyondLimit
                          : says.below(formatFlow(schemes[i]?.need ?? need, units))}
                      </span>
                    )}
                  </span>
                  {cell.note && <small>{cell.note}</small>}
                </td>
              ))}
            </tr>
          ))}
          <tr>
            <th scope="row">{says.pressure}</th>
            {schemes.map((scheme) => (
              <td key={scheme.id}>
                {scheme.solved ? (
                  <>
                    <BudgetBar scheme={scheme} most={most} units={units} />
                    <BudgetFigures scheme={scheme} units={units} />
                  </>
                ) : (
                  scheme.reason
                )}
              </td>
            ))}
          </tr>
          <tr className="compare-findings">
            <th scope="row">{says.findings}</th>
            {schemes.map(({ id, findings }) => (
              <td key={id}>
                <ul>
                  {findings.slice(0, told).map((finding) => (
                    <li key={finding.id} data-severity={finding.severity}>
                      <strong>{words.panels.severities[finding.severity]}</strong>{' '}
                      <span>{finding.message}</span>
                    </li>
                  ))}
                  {findings.length > told && <li>{says.more(findings.length - told)}</li>}
                  {findings.length === 0 && <li>{says.none}</li>}
                </ul>
              </td>
            ))}
          </tr>
        </tbody>
      </table>
      <p className="compare-foot">
        <span className="on-paper">{says.cutShort} </span>
        {says.foot(pricesAreInvented)}
      </p>
    </section>
  );
}

/** More rows than usual, as several hoods give, are printed smaller, so that one page holds them. */
function fitting(rows: number): CSSProperties {
  return { '--paper-zoom': Math.min(1, usualRows / rows) } as CSSProperties;
}

/** Rows that a page holds at full size. */
const usualRows = 16;

/** Findings that are told in full. */
const told = 3;
