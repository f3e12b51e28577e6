import { sourceWords } from '../../graph/derive/text.ts';
import type { Job } from '../../graph/document.ts';
import { replaceFields } from '../../graph/edits/index.ts';
import { findLimit } from '../../hydraulics/catalogue.ts';
import { formatLength, parseLength, parseQuantity, quantity } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useApp, useBoard } from '../context.ts';
import { QuantityField } from '../controls.tsx';
import { Choice } from './fields.tsx';
import { within } from './reading.ts';

const says = words.kitchen.cooktop;

type Kitchen = Job['kitchen'];
type Stove = NonNullable<Kitchen['cooktop']>;

const fuels = [
  { id: 'gas', name: says.fuels.gas },
  { id: 'electric', name: says.fuels.electric },
  { id: 'induction', name: says.fuels.induction },
  { id: 'solid', name: says.fuels.solid },
] as const;

const placements = [
  { id: 'wall', name: says.placements.wall },
  { id: 'island', name: says.placements.island },
  { id: 'outdoor', name: says.placements.outdoor },
] as const;

/** A cooktop as wide as the hood, or 30 in, to start from. */
const ordinaryWidth = 0.762;

/** The cooktop and the heights over it. */
export function Cooktop() {
  const { board } = useApp();
  const units = useBoard((state) => state.units);
  const kitchen = useBoard((state) => state.job.kitchen);
  const hoodWidth = useBoard((state) => state.job.hoods[0]?.width);
  const { cooktop } = kitchen;
  const change = (label: string, fields: Partial<Kitchen>) =>
    board.dispatch(label, (job) => replaceFields(job, { kitchen: { ...kitchen, ...fields } }));
  const start: Stove = { fuel: 'gas', width: hoodWidth ?? ordinaryWidth, placement: 'wall' };
  const stove = (label: string, fields: Partial<Stove>) =>
    change(label, { cooktop: { ...(cooktop ?? start), ...fields } });
  const clearance = findLimit('clear-cooktop');
  const tooLow = (kitchen.mountingHeight ?? Number.POSITIVE_INFINITY) < Number(clearance?.value);
  const length = (text: string) => parseLength(text, units);
  const show = (metres: number) => formatLength(metres, units);
  return (
    <section className="details" aria-label={says.label}>
      <h3>{says.label}</h3>
      <div className="field-grid">
        <Choice
          label={says.fuel}
          choices={fuels}
          value={cooktop?.fuel ?? null}
          onChoose={(fuel) => stove(words.edits.kitchen.fuel, { fuel })}
        />
        <Choice
          label={says.placement}
          choices={placements}
          value={cooktop?.placement ?? null}
          onChoose={(placement) => stove(words.edits.kitchen.placement, { placement })}
        />
        <QuantityField
          label={says.width}
          value={cooktop ? show(cooktop.width) : ''}
          parse={(text) => within(length(text), 0.15, 3, says.widthRange, show)}
          onCommit={(width) => stove(words.edits.kitchen.cooktopWidth, { width })}
        />
        <QuantityField
          label={says.heatInput}
          value={cooktop?.heatInput === undefined ? '' : quantity('heat', cooktop.heatInput, units).text}
          parse={(text) =>
            within(
              parseQuantity('heat', text, units),
              0,
              100_000,
              says.heatInputRange,
              (watts) => quantity('heat', watts, units).text,
            )
          }
          onCommit={(heatInput) => stove(words.edits.kitchen.heatInput, { heatInput })}
        />
        <QuantityField
          label={says.hoodAbove}
          value={kitchen.mountingHeight === undefined ? '' : show(kitchen.mountingHeight)}
          parse={(text) => within(length(text), 0.3, 3, says.hoodAboveRange, show)}
          onCommit={(mountingHeight) => change(words.edits.kitchen.mountingHeight, { mountingHeight })}
        />
        <QuantityField
          label={says.ceiling}
          value={show(kitchen.ceilingHeight)}
          parse={(text) => within(length(text), 1.8, 10, says.ceilingRange, show)}
          onCommit={(ceilingHeight) => change(words.edits.kitchen.ceilingHeight, { ceilingHeight })}
        />
      </div>
      {cooktop?.fuel === 'solid' && <p className="caution">{says.solidFuel}</p>}
      {tooLow && clearance && (
        <p className="caution">
          {says.tooLow(
            clearance.what,
            clearance.printed,
            clearance.source,
            sourceWords[clearance.sourceKind],
          )}
        </p>
      )}
    </section>
  );
}
