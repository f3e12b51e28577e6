import type { Hood } from '../../graph/document.ts';
import { type FanData, scalableFrom, setFanData } from '../../graph/edits/index.ts';
import { ASSUMED_SHUT_OFF } from '../../hydraulics/fan-data.ts';
import { formatFlow, formatPressure, formatTrimmed, parseFlow, parsePressure } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useApp, useBoard } from '../context.ts';
import { QuantityField } from '../controls.tsx';
import { Choice } from '../kitchen/fields.tsx';
import { above, readPlain } from '../kitchen/reading.ts';
import { CurveTable } from './CurveTable.tsx';

const says = words.hood.fanData;

/** The figures of one speed's fan, in the form in which they are known. */
export function FanDataFields({ hood, index }: { hood: Hood; index: number }) {
  const { board } = useApp();
  const units = useBoard((state) => state.units);
  const speed = hood.speeds[index];
  if (!speed) return null;
  const set = (label: string, data: FanData) =>
    board.dispatch(label, (job) => setFanData(job, hood.id, index, data));
  const readFlow = (text: string) => above(parseFlow(text, units), says.flowRefused);
  const readPressure = (text: string) => above(parsePressure(text, units), says.pressureRefused);
  const pressureName = speed.pressureBasis === 'static' ? says.staticPressure : says.totalPressure;
  const { curve, certified, freeAir, single, scaledFrom } = speed;

  if (curve)
    return (
      <CurveTable
        points={curve}
        pressureName={pressureName}
        onCommit={(points) => set(words.edits.hood.curve, { curve: points })}
      />
    );
  if (certified)
    return (
      <CurveTable
        points={certified}
        fixed
        pressureName={pressureName}
        onCommit={([one, other]) => {
          if (one && other) set(words.edits.hood.certifiedPoints, { certified: [one, other] });
        }}
      />
    );
  if (freeAir)
    return (
      <div className="field-grid">
        <QuantityField
          label={says.freeFlow}
          value={formatFlow(freeAir.flow, units)}
          parse={readFlow}
          onCommit={(flow) => set(words.edits.hood.freeFlow, { freeAir: { ...freeAir, flow } })}
        />
        <QuantityField
          label={says.shutOff}
          value={formatPressure(freeAir.shutOffPressure, units)}
          parse={readPressure}
          onCommit={(shutOffPressure) =>
            set(words.edits.hood.shutOff, { freeAir: { ...freeAir, shutOffPressure } })
          }
        />
      </div>
    );
  if (single)
    return (
      <div className="field-grid">
        <QuantityField
          label={says.advertised}
          value={formatFlow(single.flow, units)}
          parse={readFlow}
          onCommit={(flow) => set(words.edits.hood.advertised, { single: { ...single, flow } })}
        />
        <QuantityField
          label={says.assumedShutOff}
          value={formatPressure(single.assumedShutOffPressure ?? ASSUMED_SHUT_OFF, units)}
          parse={readPressure}
          onCommit={(assumedShutOffPressure) =>
            set(words.edits.hood.assumedPressure, { single: { ...single, assumedShutOffPressure } })
          }
        />
      </div>
    );
  if (scaledFrom)
    return (
      <div className="field-grid">
        <Choice
          label={says.scaledFrom}
          choices={scalableFrom(hood, index).map((name) => ({ id: name, name }))}
          value={scaledFrom.speed}
          onChoose={(name) => set(words.edits.hood.fanLaw, { scaledFrom: { ...scaledFrom, speed: name } })}
        />
        <QuantityField
          label={says.speedRatio}
          value={formatTrimmed(scaledFrom.ratio, 4)}
          parse={(text) =>
            readPlain(text, { what: says.speedRatioRange, low: 0.05, high: 5, unit: /^\s*[×x]|[×x]\s*$/ })
          }
          onCommit={(ratio) => set(words.edits.hood.fanLaw, { scaledFrom: { ...scaledFrom, ratio } })}
        />
      </div>
    );
  return null;
}
