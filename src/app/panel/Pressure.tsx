import { Button } from 'react-aria-components';
import { formatPressure } from '../../units/index.ts';
import { useApp, useBoard } from '../context.ts';
import { pressureLedger } from '../ledger.ts';
import { percent } from '../wording.ts';
import { PressureProfile } from './PressureProfile.tsx';

/** Where the pressure of the chosen speed goes, the greediest first. */
export function Pressure() {
  const { board, sheets } = useApp();
  const units = useBoard((state) => state.units);
  const speed = useBoard((state) => state.solution.speeds[state.speed]);
  const route = useBoard((state) => state.solution.route);
  const hover = useBoard((state) => state.hover);
  const selection = useBoard((state) => state.selection);
  if (!speed?.outcome.solved)
    return (
      <div className="empty-state">
        <h2>Where the pressure goes</h2>
        <p>{speed && !speed.outcome.solved ? speed.outcome.reason : 'Draw a route from a hood to a cap.'}</p>
        <p>Then every duct and fitting stands here with the part of the fan's pressure that it uses up.</p>
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
        At <strong>{speed.name}</strong> the fan gives{' '}
        <strong>{formatPressure(speed.outcome.totalPressure, units)}</strong>; this is where it goes:
      </p>
      <PressureProfile profile={speed.outcome.profile} />
      <ol className="ledger">
        {entries.map((entry) => (
          <li key={entry.id}>
            <Button
              className="ledger-row"
              data-lit={pointedAt(entry.place) || undefined}
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
              <span className="ledger-loss">{formatPressure(entry.loss, units)}</span>
              <span className="bar thin" aria-hidden="true">
                <span style={{ width: `${(100 * Math.max(0, entry.loss)) / most}%` }} />
              </span>
              <span className="ledger-share">{percent(entry.share)}</span>
            </Button>
          </li>
        ))}
      </ol>
    </>
  );
}
