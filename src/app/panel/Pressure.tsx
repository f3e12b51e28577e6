import { Button } from 'react-aria-components';
import type { FigureRef } from '../../graph/derive/derivation.ts';
import { formatPressure } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useApp, useBoard } from '../context.ts';
import { Explained } from '../explain/Explained.tsx';
import { useRoving } from '../explain/roving.ts';
import { type LedgerEntry, pressureLedger } from '../ledger.ts';
import { percent } from '../wording.ts';
import { PressureProfile } from './PressureProfile.tsx';

const says = words.panels.pressure;

/** Where the pressure of the chosen speed goes, the greediest first. */
export function Pressure() {
  const { board, sheets, ui } = useApp();
  const units = useBoard((state) => state.units);
  const speed = useBoard((state) => state.solution.speeds[state.speed]);
  const route = useBoard((state) => state.solution.route);
  const index = useBoard((state) => state.speed);
  const roving = useRoving<HTMLOListElement>();
  const hover = useBoard((state) => state.hover);
  const selection = useBoard((state) => state.selection);
  if (!speed?.outcome.solved)
    return (
      <div className="empty-state">
        <h2>{says.heading}</h2>
        <p>{speed && !speed.outcome.solved ? speed.outcome.reason : says.draw}</p>
        <p>{says.empty}</p>
      </div>
    );
  const entries = pressureLedger(speed.outcome, route);
  const most = Math.max(...entries.map((entry) => entry.loss), Number.MIN_VALUE);
  const pointedAt = (ids: { nodes: readonly string[]; segments: readonly string[] }) =>
    ids.nodes.some((id) => hover.nodes.includes(id) || selection.nodes.includes(id)) ||
    ids.segments.some((id) => hover.segments.includes(id) || selection.segments.includes(id));
  return (
    <>
      <p className="lead">
        {says.at} <strong>{speed.name}</strong> {says.fanGives}{' '}
        <strong>
          <Explained refTo={{ figure: 'total pressure', speed: index }}>
            {formatPressure(speed.outcome.totalPressure, units)}
          </Explained>
        </strong>
        {says.goesHere}
      </p>
      <PressureProfile solved={speed.outcome} />
      <Button className="text-button" onPress={() => ui.setState({ charts: true, table: false })}>
        {says.largerCharts}
      </Button>
      <ol className="ledger" {...roving}>
        {entries.map((entry) => (
          <li key={entry.id} className="ledger-row" data-lit={pointedAt(entry.place) || undefined}>
            <Button
              className="ledger-pick"
              onHoverStart={() => board.set({ hover: entry.place })}
              onHoverEnd={() => board.set({ hover: { nodes: [], segments: [] } })}
              onFocus={() => board.set({ hover: entry.place })}
              onBlur={() => board.set({ hover: { nodes: [], segments: [] } })}
              onPress={() => {
                board.set({ selection: entry.place });
                sheets.reveal(entry.place);
              }}
            >
              <span className="ledger-name">
                {entry.name} <small>{entry.what}</small>
              </span>
            </Button>
            <span className="ledger-loss">
              <Maybe refTo={lossOf(entry, index)}>{formatPressure(entry.loss, units)}</Maybe>
            </span>
            <span className="bar thin" aria-hidden="true">
              <span style={{ width: `${(100 * Math.max(0, entry.loss)) / most}%` }} />
            </span>
            <span className="ledger-share">
              <Maybe refTo={shareOf(entry, index)}>{percent(entry.share)}</Maybe>
            </span>
          </li>
        ))}
      </ol>
    </>
  );
}

/** A figure that is explained where there is something to explain it by. */
function Maybe({ refTo, children }: { refTo: FigureRef | undefined; children: string }) {
  return refTo ? <Explained refTo={refTo}>{children}</Explained> : children;
}

function lossOf({ figure, id }: LedgerEntry, speed: number): FigureRef | undefined {
  if (figure === undefined) return undefined;
  return figure === 'house pressure' ? { figure, speed } : { figure, speed, at: id };
}

function shareOf({ figure, id }: LedgerEntry, speed: number): FigureRef | undefined {
  if (figure === undefined || figure === 'house pressure') return undefined;
  return { figure: 'share of pressure', speed, at: id };
}
