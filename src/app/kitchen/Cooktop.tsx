import { sourceWords } from '../../graph/derive/text.ts';
import type { Job } from '../../graph/document.ts';
import { replaceFields } from '../../graph/edits/index.ts';
import { findLimit } from '../../hydraulics/catalogue.ts';
import { formatLength, parseLength, parseQuantity, quantity } from '../../units/index.ts';
import { useApp, useBoard } from '../context.ts';
import { QuantityField } from '../controls.tsx';
import { Choice } from './fields.tsx';
import { within } from './reading.ts';

type Kitchen = Job['kitchen'];
type Stove = NonNullable<Kitchen['cooktop']>;

const fuels = [
  { id: 'gas', name: 'Gas' },
  { id: 'electric', name: 'Electric' },
  { id: 'induction', name: 'Induction' },
  { id: 'solid', name: 'Solid fuel' },
] as const;

const placements = [
  { id: 'wall', name: 'Against a wall' },
  { id: 'island', name: 'Island or peninsula' },
  { id: 'outdoor', name: 'Outdoors' },
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
    <section className="details" aria-label="Cooktop">
      <h3>Cooktop</h3>
      <div className="field-grid">
        <Choice
          label="Fuel"
          choices={fuels}
          value={cooktop?.fuel ?? null}
          onChoose={(fuel) => stove('change fuel', { fuel })}
        />
        <Choice
          label="Placement"
          choices={placements}
          value={cooktop?.placement ?? null}
          onChoose={(placement) => stove('change placement', { placement })}
        />
        <QuantityField
          label="Width"
          value={cooktop ? show(cooktop.width) : ''}
          parse={(text) => within(length(text), 0.15, 3, 'A cooktop', show)}
          onCommit={(width) => stove('change cooktop width', { width })}
        />
        <QuantityField
          label="Burners in all"
          value={cooktop?.heatInput === undefined ? '' : quantity('heat', cooktop.heatInput, units).text}
          parse={(text) =>
            within(
              parseQuantity('heat', text, units),
              0,
              100_000,
              'A home cooktop',
              (watts) => quantity('heat', watts, units).text,
            )
          }
          onCommit={(heatInput) => stove('change heat input', { heatInput })}
        />
        <QuantityField
          label="Hood above it"
          value={kitchen.mountingHeight === undefined ? '' : show(kitchen.mountingHeight)}
          parse={(text) => within(length(text), 0.3, 3, 'The height from cooktop to hood', show)}
          onCommit={(mountingHeight) => change('change mounting height', { mountingHeight })}
        />
        <QuantityField
          label="Ceiling height"
          value={show(kitchen.ceilingHeight)}
          parse={(text) => within(length(text), 1.8, 10, 'A ceiling height', show)}
          onCommit={(ceilingHeight) => change('change ceiling height', { ceilingHeight })}
        />
      </div>
      {cooktop?.fuel === 'solid' && (
        <p className="caution">
          Solid fuel throws sparks and soot: codes ask for an exhaust of its own, and none of it is computed
          here (common practice). Ask the local authority.
        </p>
      )}
      {tooLow && clearance && (
        <p className="caution">
          {clearance.what} It is {clearance.printed}: {clearance.source} ({sourceWords[clearance.sourceKind]}
          ). The hood's instructions decide.
        </p>
      )}
    </section>
  );
}
