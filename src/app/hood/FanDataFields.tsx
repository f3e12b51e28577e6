import type { Hood } from '../../graph/document.ts';
import { type FanData, scalableFrom, setFanData } from '../../graph/edits/index.ts';
import { ASSUMED_SHUT_OFF } from '../../hydraulics/fan-data.ts';
import { formatFlow, formatPressure, parseFlow, parsePressure } from '../../units/index.ts';
import { useApp, useBoard } from '../context.ts';
import { QuantityField } from '../controls.tsx';
import { Choice } from '../kitchen/fields.tsx';
import { above, readPlain, trimmed } from '../kitchen/reading.ts';
import { CurveTable } from './CurveTable.tsx';

/** The figures of one speed's fan, in the form in which they are known. */
export function FanDataFields({ hood, index }: { hood: Hood; index: number }) {
  const { board } = useApp();
  const units = useBoard((state) => state.units);
  const speed = hood.speeds[index];
  if (!speed) return null;
  const set = (label: string, data: FanData) =>
    board.dispatch(label, (job) => setFanData(job, hood.id, index, data));
  const readFlow = (text: string) => above(parseFlow(text, units), 'A fan moves more than 0.');
  const readPressure = (text: string) => above(parsePressure(text, units), 'A fan gives more than 0.');
  const pressureName = speed.pressureBasis === 'static' ? 'Static pressure' : 'Total pressure';
  const { curve, certified, freeAir, single, scaledFrom } = speed;

  if (curve)
    return (
      <CurveTable
        points={curve}
        pressureName={pressureName}
        onCommit={(points) => set('change fan curve', { curve: points })}
      />
    );
  if (certified)
    return (
      <CurveTable
        points={certified}
        fixed
        pressureName={pressureName}
        onCommit={([one, other]) => {
          if (one && other) set('change certified points', { certified: [one, other] });
        }}
      />
    );
  if (freeAir)
    return (
      <div className="field-grid">
        <QuantityField
          label="Flow in free air"
          value={formatFlow(freeAir.flow, units)}
          parse={readFlow}
          onCommit={(flow) => set('change free-air flow', { freeAir: { ...freeAir, flow } })}
        />
        <QuantityField
          label="Pressure at shut-off"
          value={formatPressure(freeAir.shutOffPressure, units)}
          parse={readPressure}
          onCommit={(shutOffPressure) =>
            set('change shut-off pressure', { freeAir: { ...freeAir, shutOffPressure } })
          }
        />
      </div>
    );
  if (single)
    return (
      <div className="field-grid">
        <QuantityField
          label="Advertised flow"
          value={formatFlow(single.flow, units)}
          parse={readFlow}
          onCommit={(flow) => set('change advertised flow', { single: { ...single, flow } })}
        />
        <QuantityField
          label="Shut-off pressure, assumed"
          value={formatPressure(single.assumedShutOffPressure ?? ASSUMED_SHUT_OFF, units)}
          parse={readPressure}
          onCommit={(assumedShutOffPressure) =>
            set('change assumed pressure', { single: { ...single, assumedShutOffPressure } })
          }
        />
      </div>
    );
  if (scaledFrom)
    return (
      <div className="field-grid">
        <Choice
          label="Scaled from"
          choices={scalableFrom(hood, index).map((name) => ({ id: name, name }))}
          value={scaledFrom.speed}
          onChoose={(name) => set('change fan law', { scaledFrom: { ...scaledFrom, speed: name } })}
        />
        <QuantityField
          label="Speed of rotation, times"
          value={trimmed(scaledFrom.ratio, 4)}
          parse={(text) =>
            readPlain(text, { what: 'A speed ratio', low: 0.05, high: 5, unit: /^\s*[×x]|[×x]\s*$/ })
          }
          onCommit={(ratio) => set('change fan law', { scaledFrom: { ...scaledFrom, ratio } })}
        />
      </div>
    );
  return null;
}
