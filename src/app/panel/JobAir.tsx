import type { Job } from '../../graph/document.ts';
import { replaceFields } from '../../graph/edits/index.ts';
import { formatTemperature, parseQuantity, parseTemperature, quantity } from '../../units/index.ts';
import { useApp, useBoard } from '../context.ts';
import { QuantityField } from '../controls.tsx';

/** The air that every scheme of the job is solved with. */
export function JobAir() {
  const { board } = useApp();
  const units = useBoard((state) => state.units);
  const air = useBoard((state) => state.job.air);
  const change = (label: string, fields: Partial<Job['air']>) =>
    board.dispatch(label, (job) => replaceFields(job, { air: { ...air, ...fields } }));
  const within = (low: number, high: number, words: string, read: ReturnType<typeof parseTemperature>) =>
    read.ok && (read.value < low || read.value > high) ? ({ ok: false, message: words } as const) : read;
  return (
    <section className="details" aria-label="Air">
      <h3>Air of the job</h3>
      <div className="place-fields">
        <QuantityField
          label="Above sea"
          value={quantity('elevation', air.elevation, units).text}
          parse={(text) =>
            within(
              -500,
              6000,
              'From 500 m below the sea to 6000 m above it.',
              parseQuantity('elevation', text, units),
            )
          }
          onCommit={(elevation) => change('change elevation', { elevation })}
        />
        <QuantityField
          label="Exhaust"
          value={formatTemperature(air.temperature, units)}
          parse={(text) =>
            within(-40, 80, 'Between -40 and 80 °C (-40 and 176 °F).', parseTemperature(text, units))
          }
          onCommit={(temperature) => change('change air temperature', { temperature })}
        />
      </div>
    </section>
  );
}
