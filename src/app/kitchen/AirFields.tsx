import type { Job } from '../../graph/document.ts';
import { replaceFields } from '../../graph/edits/index.ts';
import { formatTemperature, parseQuantity, parseTemperature, quantity } from '../../units/index.ts';
import { useApp, useBoard } from '../context.ts';
import { QuantityField } from '../controls.tsx';
import { Choice } from './fields.tsx';
import { readPercent, trimmed, within } from './reading.ts';

const systems = [
  { id: 'imperial', name: 'Feet, inches, cfm, in w.g.' },
  { id: 'metric', name: 'Millimetres, m³/h, Pa' },
] as const;

/** The air in the duct and outdoors, the same for every scheme. */
export function AirFields() {
  const { board } = useApp();
  const units = useBoard((state) => state.units);
  const air = useBoard((state) => state.job.air);
  const density = useBoard((state) => state.solution.air.density);
  const change = (label: string, fields: Partial<Job['air']>) =>
    board.dispatch(label, (job) => replaceFields(job, { air: { ...air, ...fields } }));
  const degrees = (celsius: number) => formatTemperature(celsius, units);
  const height = (metres: number) => quantity('elevation', metres, units).text;
  return (
    <section className="details" aria-label="Air and units">
      <h3>Air and units</h3>
      <div className="field-grid">
        <QuantityField
          label="Above the sea"
          value={height(air.elevation)}
          parse={(text) =>
            within(parseQuantity('elevation', text, units), -500, 6000, 'The height above the sea', height)
          }
          onCommit={(elevation) => change('change elevation', { elevation })}
        />
        <QuantityField
          label="Relative humidity"
          value={`${trimmed(100 * air.humidity, 1)} %`}
          parse={(text) => readPercent(text, 'Relative humidity')}
          onCommit={(humidity) => change('change humidity', { humidity })}
        />
        <QuantityField
          label="Air in the duct"
          value={degrees(air.temperature)}
          parse={(text) => within(parseTemperature(text, units), -40, 80, 'Air in a kitchen duct', degrees)}
          onCommit={(temperature) => change('change air temperature', { temperature })}
        />
        <QuantityField
          label="Outdoors"
          value={degrees(air.outdoorTemperature)}
          parse={(text) => within(parseTemperature(text, units), -60, 60, 'Outdoor air', degrees)}
          onCommit={(outdoorTemperature) => change('change outdoor temperature', { outdoorTemperature })}
        />
      </div>
      <Choice
        label="Units of the job"
        choices={systems}
        value={units}
        onChoose={(system) => board.dispatch('change units', (job) => replaceFields(job, { units: system }))}
      />
      <p className="hint">
        Density {quantity('density', density, units).text}; fans are rated in standard air of{' '}
        {quantity('density', 1.2, units).text}.
      </p>
    </section>
  );
}
