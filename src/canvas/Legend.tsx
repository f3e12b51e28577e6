import { useSyncExternalStore } from 'react';
import { type Selection as Keys, ToggleButton, ToggleButtonGroup } from 'react-aria-components';
import limits from '../../shared/limits.json' with { type: 'json' };
import { quantity } from '../units/index.ts';
import type { Board, BoardState, ColourBy } from './board.ts';
import { type ColourScale, legendStops } from './colour.ts';
import { colourScaleOf } from './painter.ts';
import './canvas.css';

const choices: readonly { readonly by: ColourBy; readonly text: string }[] = [
  { by: 'velocity', text: 'Velocity' },
  { by: 'loss', text: 'Loss per length' },
];

const gradient = `linear-gradient(to right, ${legendStops(12)
  .map((stop) => `${stop.colour} ${(stop.share * 100).toFixed(1)}%`)
  .join(', ')})`;

/** What the fills of the ducts mean, in numbers; switches between velocity and loss per length. */
export function Legend({ board }: { readonly board: Board }) {
  const state = useSyncExternalStore(board.subscribe, board.getState);
  const scale = colourScaleOf(state);
  const speed = state.solution.speeds[state.speed];
  const choose = (keys: Keys) => {
    const chosen = choices.find(({ by }) => keys !== 'all' && keys.has(by));
    if (chosen) board.set({ colourBy: chosen.by });
  };
  return (
    <section className="legend" aria-label={`Colour of the ducts, ${scale.unit}`}>
      <div className="legend-head">
        <ToggleButtonGroup
          className="legend-switch"
          aria-label="Colour ducts by"
          selectionMode="single"
          disallowEmptySelection
          selectedKeys={[state.colourBy]}
          onSelectionChange={choose}
        >
          {choices.map(({ by, text }) => (
            <ToggleButton key={by} id={by}>
              {text}
            </ToggleButton>
          ))}
        </ToggleButtonGroup>
        {speed && <span className="legend-speed">{speed.name}</span>}
      </div>
      <div className="legend-bar" style={{ background: gradient }}>
        <Band scale={scale} state={state} />
      </div>
      <div className="legend-ticks" aria-hidden="true">
        {scale.ticks.map((tick, i) => (
          <span key={tick.text} style={{ left: `${tick.share * 100}%` }} data-edge={edgeOf(tick.share, i)}>
            {tick.text}
          </span>
        ))}
      </div>
      <div className="legend-note">{noteOf(scale, state)}</div>
    </section>
  );
}

function edgeOf(share: number, index: number): 'first' | 'last' | undefined {
  if (index === 0) return 'first';
  return share > 0.97 ? 'last' : undefined;
}

/** Low and high end of the advised velocities, m/s; null where the catalogue has none. */
function advised(): { readonly low: number; readonly high: number; readonly source: string } | null {
  const row = limits.rows.find(({ id }) => id === 'velocity-band');
  const [low, high] = Array.isArray(row?.value) ? row.value : [];
  return row && low !== undefined && high !== undefined ? { low, high, source: row.source } : null;
}

function Band({ scale, state }: { readonly scale: ColourScale; readonly state: BoardState }) {
  const band = state.colourBy === 'velocity' ? advised() : null;
  if (!band || band.low >= scale.max) return null;
  const [left, right] = [band.low / scale.max, Math.min(1, band.high / scale.max)];
  return (
    <div className="legend-band" style={{ left: `${left * 100}%`, width: `${(right - left) * 100}%` }} />
  );
}

function noteOf(scale: ColourScale, state: BoardState): string {
  const band = state.colourBy === 'velocity' ? advised() : null;
  if (!band) return scale.unit;
  const low = quantity('velocity', band.low, state.units).figure;
  return `${scale.unit}; advised ${low}–${quantity('velocity', band.high, state.units).text}`;
}
