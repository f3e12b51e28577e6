import { useState } from 'react';
import { Button } from 'react-aria-components';
import { replaceFields } from '../../graph/edits/index.ts';
import { formatFlow, parseFlow, parseQuantity, quantity } from '../../units/index.ts';
import { useApp, useBoard } from '../context.ts';
import { QuantityField } from '../controls.tsx';
import { Appliances } from './Appliances.tsx';
import { Choice } from './fields.tsx';
import { ach50From, type ChangeHouse, type DrawnHouse, flowAt50 } from './house.ts';
import { MakeUpAir } from './MakeUpAir.tsx';
import { OtherExhaust } from './OtherExhaust.tsx';
import { above, readPlain, trimmed, within } from './reading.ts';

/** The house around the kitchen, or the two figures that it takes to have one. */
export function HouseFields() {
  const house = useBoard((state) => state.job.house);
  return (
    <section className="details" aria-label="House">
      <h3>House</h3>
      {house ? <Described house={house} /> : <Undescribed />}
    </section>
  );
}

const storeys = [
  { id: '1', name: '1' },
  { id: '2', name: '2' },
  { id: '3', name: '3' },
  { id: '4', name: '4 or more' },
] as const;

const readAch = (text: string) =>
  readPlain(text, { what: 'Air changes at 50 Pa', low: 0.05, high: 60, unit: /\s*(ach ?50|ach|\/h)$/i });

/** Smallest and largest volume that is taken for a home, m3. */
const volumes = [10, 20_000] as const;

function Described({ house }: { house: DrawnHouse }) {
  const { board } = useApp();
  const units = useBoard((state) => state.units);
  const ceiling = useBoard((state) => state.job.kitchen.ceilingHeight);
  const change: ChangeHouse = (label, fields) =>
    board.dispatch(label, (job) => replaceFields(job, { house: { ...house, ...fields } }));
  const volume = (cubicMetres: number) => quantity('volume', cubicMetres, units).text;
  const floor = (area: number) => quantity('floorArea', area, units).text;
  return (
    <>
      <div className="field-grid">
        <QuantityField
          label="Volume"
          value={volume(house.volume)}
          parse={(text) => within(parseQuantity('volume', text, units), ...volumes, 'A home', volume)}
          onCommit={(value) => change('change house volume', { volume: value })}
        />
        <QuantityField
          label="or floor area"
          value={house.floorArea === undefined ? '' : floor(house.floorArea)}
          parse={(text) => within(parseQuantity('floorArea', text, units), 5, 5000, 'A floor area', floor)}
          onCommit={(floorArea) => change('change floor area', { floorArea, volume: floorArea * ceiling })}
        />
        <QuantityField
          label="Air changes at 50 Pa"
          value={trimmed(house.ach50)}
          parse={readAch}
          onCommit={(ach50) => change('change airtightness', { ach50 })}
        />
        <QuantityField
          label="or flow at 50 Pa"
          value={formatFlow(flowAt50(house.ach50, house.volume), units)}
          parse={(text) => above(parseFlow(text, units), 'Every house leaks: a flow above 0.')}
          onCommit={(flow) => change('change airtightness', { ach50: ach50From(flow, house.volume) })}
        />
        <QuantityField
          label="Leakage exponent"
          value={trimmed(house.leakageExponent, 3)}
          parse={(text) => readPlain(text, { what: 'A leakage exponent', low: 0.5, high: 1 })}
          onCommit={(leakageExponent) => change('change leakage exponent', { leakageExponent })}
        />
        <Choice
          label="Storeys"
          choices={storeys}
          value={storeys[Math.min(house.storeys, 4) - 1]?.id ?? null}
          onChoose={(id) => change('change storeys', { storeys: Number(id) })}
        />
      </div>
      <p className="hint">
        A floor area, of all storeys, sets the volume: area × ceiling height. The figure at 50 Pa is a
        blower-door reading; 0.65 is the usual exponent.
      </p>
      <OtherExhaust fans={house.otherExhaust} onChange={change} />
      <MakeUpAir house={house} onChange={change} />
      <Appliances names={house.combustion} onChange={change} />
      <Button
        className="text-button quiet"
        onPress={() =>
          board.dispatch('take the house away', (job) => replaceFields(job, { house: undefined }))
        }
      >
        Leave the house out of the reckoning
      </Button>
    </>
  );
}

/** Without a house the room is taken at outdoor pressure; two figures are enough to have one. */
function Undescribed() {
  const { board } = useApp();
  const units = useBoard((state) => state.units);
  const [volume, setVolume] = useState<number | null>(null);
  const [ach50, setAch50] = useState<number | null>(null);
  const take = (figures: { volume: number | null; ach50: number | null }) => {
    setVolume(figures.volume);
    setAch50(figures.ach50);
    if (figures.volume === null || figures.ach50 === null) return;
    const house: DrawnHouse = {
      volume: figures.volume,
      ach50: figures.ach50,
      leakageExponent: 0.65,
      storeys: 1,
      otherExhaust: [],
      makeUpAir: null,
      combustion: [],
    };
    board.dispatch('describe the house', (job) => replaceFields(job, { house }));
  };
  const show = (cubicMetres: number) => quantity('volume', cubicMetres, units).text;
  return (
    <>
      <p className="hint">
        No house is described, so the kitchen is taken to stand at outdoor pressure and the hood to get all
        the air it asks for. A tight house gives less, and may draw flue gas back in. Two figures are enough:
      </p>
      <div className="field-grid">
        <QuantityField
          label="Volume"
          value={volume === null ? '' : show(volume)}
          parse={(text) => within(parseQuantity('volume', text, units), ...volumes, 'A home', show)}
          onCommit={(value) => take({ volume: value, ach50 })}
        />
        <QuantityField
          label="Air changes at 50 Pa"
          value={ach50 === null ? '' : trimmed(ach50)}
          parse={readAch}
          onCommit={(value) => take({ volume, ach50: value })}
        />
      </div>
    </>
  );
}
