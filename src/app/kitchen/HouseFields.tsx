import { useState } from 'react';
import { Button } from 'react-aria-components';
import { replaceFields } from '../../graph/edits/index.ts';
import { formatFlow, formatTrimmed, parseFlow, parseQuantity, quantity } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useApp, useBoard } from '../context.ts';
import { QuantityField } from '../controls.tsx';
import { Terms } from '../term/Terms.tsx';
import { Appliances } from './Appliances.tsx';
import { Choice } from './fields.tsx';
import { ach50From, type ChangeHouse, type DrawnHouse, flowAt50 } from './house.ts';
import { MakeUpAir } from './MakeUpAir.tsx';
import { OtherExhaust } from './OtherExhaust.tsx';
import { above, readPlain, within } from './reading.ts';

const says = words.kitchen.house;

/** The house around the kitchen, or the two figures that it takes to have one. */
export function HouseFields() {
  const house = useBoard((state) => state.job.house);
  return (
    <section className="details" aria-label={says.label}>
      <h3>{says.label}</h3>
      {house ? <Described house={house} /> : <Undescribed />}
    </section>
  );
}

const storeys = [
  { id: '1', name: '1' },
  { id: '2', name: '2' },
  { id: '3', name: '3' },
  { id: '4', name: says.fourStoreys },
] as const;

const readAch = (text: string) =>
  readPlain(text, { what: says.airChanges, low: 0.05, high: 60, unit: /\s*(ach ?50|ach|\/h)$/i });

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
          label={says.volume}
          value={volume(house.volume)}
          parse={(text) => within(parseQuantity('volume', text, units), ...volumes, says.volumeRange, volume)}
          onCommit={(value) => change(words.edits.house.volume, { volume: value })}
        />
        <QuantityField
          label={says.floorArea}
          value={house.floorArea === undefined ? '' : floor(house.floorArea)}
          parse={(text) =>
            within(parseQuantity('floorArea', text, units), 5, 5000, says.floorAreaRange, floor)
          }
          onCommit={(floorArea) =>
            change(words.edits.house.floorArea, { floorArea, volume: floorArea * ceiling })
          }
        />
        <QuantityField
          label={says.airChanges}
          value={formatTrimmed(house.ach50)}
          parse={readAch}
          onCommit={(ach50) => change(words.edits.house.airtightness, { ach50 })}
        />
        <QuantityField
          label={says.flow}
          value={formatFlow(flowAt50(house.ach50, house.volume), units)}
          parse={(text) => above(parseFlow(text, units), says.flowRefused)}
          onCommit={(flow) =>
            change(words.edits.house.airtightness, { ach50: ach50From(flow, house.volume) })
          }
        />
        <QuantityField
          label={says.exponent}
          value={formatTrimmed(house.leakageExponent, 3)}
          parse={(text) => readPlain(text, { what: says.exponentRange, low: 0.5, high: 1 })}
          onCommit={(leakageExponent) => change(words.edits.house.exponent, { leakageExponent })}
        />
        <Choice
          label={says.storeys}
          choices={storeys}
          value={storeys[Math.min(house.storeys, 4) - 1]?.id ?? null}
          onChoose={(id) => change(words.edits.house.storeys, { storeys: Number(id) })}
        />
      </div>
      <p className="hint">{says.hint}</p>
      <Terms of={['airtightness', 'housePressure', 'makeUpAir', 'naturalDraught']} />
      <OtherExhaust fans={house.otherExhaust} onChange={change} />
      <MakeUpAir house={house} onChange={change} />
      <Appliances names={house.combustion} onChange={change} />
      <Button
        className="text-button quiet"
        onPress={() =>
          board.dispatch(words.edits.house.takeAway, (job) => replaceFields(job, { house: undefined }))
        }
      >
        {says.takeAway}
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
    board.dispatch(words.edits.house.describe, (job) => replaceFields(job, { house }));
  };
  const show = (cubicMetres: number) => quantity('volume', cubicMetres, units).text;
  return (
    <>
      <p className="hint">{says.undescribed}</p>
      <div className="field-grid">
        <QuantityField
          label={says.volume}
          value={volume === null ? '' : show(volume)}
          parse={(text) => within(parseQuantity('volume', text, units), ...volumes, says.volumeRange, show)}
          onCommit={(value) => take({ volume: value, ach50 })}
        />
        <QuantityField
          label={says.airChanges}
          value={ach50 === null ? '' : formatTrimmed(ach50)}
          parse={readAch}
          onCommit={(value) => take({ volume, ach50: value })}
        />
      </div>
    </>
  );
}
