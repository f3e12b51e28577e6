import type { Job } from '../../graph/document.ts';
import { replaceFields } from '../../graph/edits/index.ts';
import {
  formatTemperature,
  formatTrimmed,
  parseQuantity,
  parseTemperature,
  quantity,
} from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useApp, useBoard } from '../context.ts';
import { QuantityField } from '../controls.tsx';
import { Choice } from './fields.tsx';
import { readPercent, within } from './reading.ts';

const says = words.kitchen.air;

const systems = [
  { id: 'imperial', name: says.imperial },
  { id: 'metric', name: says.metric },
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
    <section className="details" aria-label={says.label}>
      <h3>{says.label}</h3>
      <div className="field-grid">
        <QuantityField
          label={says.elevation}
          value={height(air.elevation)}
          parse={(text) =>
            within(parseQuantity('elevation', text, units), -500, 6000, says.elevationRange, height)
          }
          onCommit={(elevation) => change(words.edits.kitchen.elevation, { elevation })}
        />
        <QuantityField
          label={says.humidity}
          value={`${formatTrimmed(100 * air.humidity, 1)} %`}
          parse={(text) => readPercent(text, says.humidity)}
          onCommit={(humidity) => change(words.edits.kitchen.humidity, { humidity })}
        />
        <QuantityField
          label={says.inDuct}
          value={degrees(air.temperature)}
          parse={(text) => within(parseTemperature(text, units), -40, 80, says.inDuctRange, degrees)}
          onCommit={(temperature) => change(words.edits.kitchen.airTemperature, { temperature })}
        />
        <QuantityField
          label={says.outdoors}
          value={degrees(air.outdoorTemperature)}
          parse={(text) => within(parseTemperature(text, units), -60, 60, says.outdoorsRange, degrees)}
          onCommit={(outdoorTemperature) =>
            change(words.edits.kitchen.outdoorTemperature, { outdoorTemperature })
          }
        />
      </div>
      <Choice
        label={says.units}
        choices={systems}
        value={units}
        onChoose={(system) =>
          board.dispatch(words.edits.job.changeUnits, (job) => replaceFields(job, { units: system }))
        }
      />
      <p className="hint">
        {says.density(quantity('density', density, units).text, quantity('density', 1.2, units).text)}
      </p>
    </section>
  );
}
