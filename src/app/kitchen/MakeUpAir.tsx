import { OPENING_C } from '../../hydraulics/house.ts';
import { formatFlow, formatTrimmed, parseArea, parseFlow, quantity } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useBoard } from '../context.ts';
import { QuantityField } from '../controls.tsx';
import { Choice } from './fields.tsx';
import type { ChangeHouse, DrawnHouse } from './house.ts';
import { above, readPlain } from './reading.ts';

const says = words.kitchen.makeUp;

const kinds = [
  { id: 'none', name: says.kinds.none, what: says.kinds.noneMeans },
  { id: 'opening', name: says.kinds.opening, what: says.kinds.openingMeans },
  { id: 'fan', name: says.kinds.fan, what: says.kinds.fanMeans },
] as const;

/** A free opening to start from where nothing says what is needed, m2. */
const ordinaryOpening = 0.02;

/** To the next square centimetre, so that what is asked for is held. */
function roundedUp(area: number): number {
  return Math.ceil(area * 1e4) / 1e4;
}

/** How air is let in to take the place of what the hood blows out. */
export function MakeUpAir({ house, onChange }: { house: DrawnHouse; onChange: ChangeHouse }) {
  const units = useBoard((state) => state.units);
  const needed = useBoard((state) => {
    const outcome = state.solution.speeds.at(-1)?.outcome;
    return outcome?.solved ? (outcome.house?.makeUpNeeded ?? null) : null;
  });
  const exhausted = useBoard((state) => {
    const outcome = state.solution.speeds.at(-1)?.outcome;
    return outcome?.solved ? outcome.flow : 0;
  });
  const { makeUpAir } = house;
  const choose = (kind: (typeof kinds)[number]['id']) => {
    const label = words.edits.house.makeUpAir;
    if (kind === 'none') onChange(label, { makeUpAir: null });
    else if (kind === 'opening')
      onChange(label, { makeUpAir: { kind, area: needed ? roundedUp(needed.opening) : ordinaryOpening } });
    else onChange(label, { makeUpAir: { kind, flow: needed?.flow || exhausted || 0.1 } });
  };
  return (
    <div className="part">
      <Choice label={says.label} choices={kinds} value={makeUpAir?.kind ?? 'none'} onChoose={choose} />
      {makeUpAir?.kind === 'opening' && (
        <div className="field-grid">
          <QuantityField
            label={says.freeArea}
            value={quantity('area', makeUpAir.area, units).text}
            parse={(text) => above(parseArea(text, units), says.freeAreaRefused)}
            onCommit={(area) =>
              onChange(words.edits.house.makeUpOpening, { makeUpAir: { ...makeUpAir, area } })
            }
          />
          <QuantityField
            label={says.c}
            value={formatTrimmed(makeUpAir.c ?? OPENING_C)}
            parse={(text) => readPlain(text, { what: says.cRange, low: 0.5, high: 100 })}
            onCommit={(c) => onChange(words.edits.house.makeUpOpening, { makeUpAir: { ...makeUpAir, c } })}
          />
        </div>
      )}
      {makeUpAir?.kind === 'fan' && (
        <QuantityField
          label={says.fanFlow}
          value={formatFlow(makeUpAir.flow, units)}
          parse={(text) => above(parseFlow(text, units), says.fanFlowRefused)}
          onCommit={(flow) => onChange(words.edits.house.makeUpFan, { makeUpAir: { kind: 'fan', flow } })}
        />
      )}
    </div>
  );
}
