import type { FigureRef } from '../../graph/derive/derivation.ts';
import { setInsulation } from '../../graph/edits/index.ts';
import type { SegmentResult } from '../../graph/solution.ts';
import { dewPoint } from '../../hydraulics/heat.ts';
import { formatLength, formatTemperature, parseLength } from '../../units/index.ts';
import { useApp, useBoard } from '../context.ts';
import { Figure, QuantityField } from '../controls.tsx';
import { Figures } from '../explain/Figures.tsx';
import { within } from '../kitchen/reading.ts';

/** The insulation of one duct, how the air cools in it, and whether water settles on its wall. */
export function Warmth({ id, result }: { id: string; result: SegmentResult | undefined }) {
  const { board } = useApp();
  const units = useBoard((state) => state.units);
  const schemeId = useBoard((state) => state.schemeId);
  const speed = useBoard((state) => state.speed);
  const thickness = useBoard(
    (state) =>
      state.live.schemes.find((s) => s.id === state.schemeId)?.segments.find((s) => s.id === id)
        ?.insulation ?? 0,
  );
  const show = (metres: number) => formatLength(metres, units);
  const ref = (figure: FigureRef['figure']): FigureRef => ({ figure, speed, at: id });
  const needed = result?.condensation.insulation;
  return (
    <div className="part">
      <h3>Warmth</h3>
      <QuantityField
        label="Insulation"
        value={thickness === 0 ? 'none' : show(thickness)}
        parse={(text) =>
          /^\s*none\s*$/i.test(text)
            ? { ok: true, value: 0 }
            : within(parseLength(text, units), 0, 0.3, 'Insulation', show)
        }
        onCommit={(value) =>
          board.dispatch('change insulation', (job) => setInsulation(job, schemeId, [id], value))
        }
      />
      {result && (
        <Figures>
          <Figure name="Air comes in at" refTo={ref('inlet temperature')}>
            {formatTemperature(result.inletTemperature, units)}
          </Figure>
          <Figure name="Air leaves at" refTo={ref('outlet temperature')}>
            {formatTemperature(result.outletTemperature, units)}
          </Figure>
          <Figure name="Coldest inside wall" refTo={ref('wall temperature')}>
            {formatTemperature(result.wallTemperature, units)}
          </Figure>
          <Figure name="Dew point of the kitchen air" refTo={{ figure: 'dew point', speed }}>
            <Dew />
          </Figure>
        </Figures>
      )}
      {result?.condensation.risk && (
        <p className="caution">
          Water settles on the wall here and runs back with grease.{' '}
          {typeof needed === 'number'
            ? `Insulation of ${show(needed)} would keep it dry.`
            : 'No ordinary insulation keeps it dry: pitch the duct to drain outdoors.'}
        </p>
      )}
    </div>
  );
}

function Dew() {
  const units = useBoard((state) => state.units);
  const air = useBoard((state) => state.solution.air);
  return formatTemperature(dewPoint(air.temperature, air.humidity), units);
}
