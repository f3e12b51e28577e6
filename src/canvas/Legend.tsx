import { useSyncExternalStore } from 'react';
import { type Selection as Keys, ToggleButton, ToggleButtonGroup } from 'react-aria-components';
import { type ColourBy, type ColourScale, legendStops } from '../drawing/colour.ts';
import type { UnitSystem } from '../graph/document.ts';
import { findLimit, need } from '../hydraulics/catalogue.ts';
import { quantity } from '../units/index.ts';
import type { Board } from './board.ts';
import { colourScaleOf } from './colouring.ts';
import './canvas.css';
import { words } from '../words/index.ts';

const says = words.sheets.legend;

const choices: readonly { readonly by: ColourBy; readonly text: string }[] = [
  { by: 'velocity', text: says.velocity },
  { by: 'loss', text: says.loss },
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
    <section className="legend" aria-label={says.label(scale.unit)}>
      <div className="legend-head">
        <ToggleButtonGroup
          className="legend-switch"
          aria-label={says.by}
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
        {speed && <span className="legend-speed">{says.at(speed.name)}</span>}
      </div>
      <div className="legend-bar" style={{ background: gradient }}>
        {scale.by === 'velocity' && <Band scale={scale} />}
      </div>
      <div className="legend-ticks" aria-hidden="true">
        {scale.ticks.map((tick, i) => (
          <span key={tick.text} style={{ left: `${tick.share * 100}%` }} data-edge={edgeOf(tick.share, i)}>
            {tick.text}
          </span>
        ))}
      </div>
      <Note scale={scale} units={state.units} />
    </section>
  );
}

function edgeOf(share: number, index: number): 'first' | 'last' | undefined {
  if (index === 0) return 'first';
  return share > 0.97 ? 'last' : undefined;
}

/** Advised velocities, m/s. */
const advice = need(findLimit('velocity-band'), 'limits', 'velocity-band');
const [low, high] = typeof advice.value === 'number' ? [0, advice.value] : advice.value;

/** Marks the advised velocities on the bar. */
function Band({ scale }: { readonly scale: ColourScale }) {
  const [left, right] = [low / scale.max, Math.min(1, high / scale.max)];
  return (
    <div className="legend-band" style={{ left: `${left * 100}%`, width: `${(right - left) * 100}%` }} />
  );
}

function Note({ scale, units }: { readonly scale: ColourScale; readonly units: UnitSystem }) {
  if (scale.by !== 'velocity') return <div className="legend-note">{scale.unit}</div>;
  const [from, to] = [low, high].map((end) => quantity('velocity', end, units).figure);
  return (
    <div className="legend-note" title={says.advice(advice.what, advice.source)}>
      {says.advised(scale.unit, from ?? '', to ?? '')}
    </div>
  );
}
