import type { FigureRef } from '../../graph/derive/derivation.ts';
import { setInsulation } from '../../graph/edits/index.ts';
import type { SegmentResult } from '../../graph/solution.ts';
import { dewPoint } from '../../hydraulics/heat.ts';
import { formatLength, formatTemperature, parseLength } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useApp, useBoard } from '../context.ts';
import { Figure, QuantityField } from '../controls.tsx';
import { Figures } from '../explain/Figures.tsx';
import { within } from '../kitchen/reading.ts';

const says = words.parts.warmth;

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
      <h3>{says.heading}</h3>
      <QuantityField
        label={says.insulation}
        value={thickness === 0 ? says.none : show(thickness)}
        parse={(text) =>
          /^\s*none\s*$/i.test(text) || text.trim() === says.none
            ? { ok: true, value: 0 }
            : within(parseLength(text, units), 0, 0.3, says.insulation, show)
        }
        onCommit={(value) =>
          board.dispatch(words.edits.route.insulation, (job) => setInsulation(job, schemeId, [id], value))
        }
      />
      {result && (
        <Figures>
          <Figure name={says.inlet} refTo={ref('inlet temperature')}>
            {formatTemperature(result.inletTemperature, units)}
          </Figure>
          <Figure name={says.outlet} refTo={ref('outlet temperature')}>
            {formatTemperature(result.outletTemperature, units)}
          </Figure>
          <Figure name={says.coldest} refTo={ref('wall temperature')}>
            {formatTemperature(result.wallTemperature, units)}
          </Figure>
          <Figure name={says.dewPoint} refTo={{ figure: 'dew point', speed }}>
            <Dew />
          </Figure>
        </Figures>
      )}
      {result?.condensation.risk && (
        <p className="caution">
          {says.water(typeof needed === 'number' ? says.insulate(show(needed)) : says.drain)}
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
