import { OPENING_C } from '../../hydraulics/house.ts';
import { formatFlow, parseArea, parseFlow, quantity } from '../../units/index.ts';
import { useBoard } from '../context.ts';
import { QuantityField } from '../controls.tsx';
import { Choice } from './fields.tsx';
import type { ChangeHouse, DrawnHouse } from './house.ts';
import { above, readPlain, trimmed } from './reading.ts';

const kinds = [
  { id: 'none', name: 'None', what: 'Air comes in by the leaks of the house alone.' },
  { id: 'opening', name: 'Opening', what: 'A free opening or a passive damper to outdoors.' },
  { id: 'fan', name: 'Fan', what: 'A fan that blows air in while the hood runs.' },
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
    const label = 'change make-up air';
    if (kind === 'none') onChange(label, { makeUpAir: null });
    else if (kind === 'opening')
      onChange(label, { makeUpAir: { kind, area: needed ? roundedUp(needed.opening) : ordinaryOpening } });
    else onChange(label, { makeUpAir: { kind, flow: needed?.flow || exhausted || 0.1 } });
  };
  return (
    <div className="part">
      <Choice label="Make-up air" choices={kinds} value={makeUpAir?.kind ?? 'none'} onChoose={choose} />
      {makeUpAir?.kind === 'opening' && (
        <div className="field-grid">
          <QuantityField
            label="Free area"
            value={quantity('area', makeUpAir.area, units).text}
            parse={(text) => above(parseArea(text, units), 'An opening is more than 0.')}
            onCommit={(area) => onChange('change make-up opening', { makeUpAir: { ...makeUpAir, area } })}
          />
          <QuantityField
            label="C on the free area"
            value={trimmed(makeUpAir.c ?? OPENING_C)}
            parse={(text) => readPlain(text, { what: 'A loss coefficient', low: 0.5, high: 100 })}
            onCommit={(c) => onChange('change make-up opening', { makeUpAir: { ...makeUpAir, c } })}
          />
        </div>
      )}
      {makeUpAir?.kind === 'fan' && (
        <QuantityField
          label="Air blown in"
          value={formatFlow(makeUpAir.flow, units)}
          parse={(text) => above(parseFlow(text, units), 'A make-up fan moves more than 0.')}
          onCommit={(flow) => onChange('change make-up fan', { makeUpAir: { kind: 'fan', flow } })}
        />
      )}
    </div>
  );
}
