import { Checkbox, CheckboxGroup, Label, ToggleButton, ToggleButtonGroup } from 'react-aria-components';
import { formatLength, formatTrimmed, parseLength } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useBoard } from '../context.ts';
import { QuantityField } from '../controls.tsx';
import { Choice } from '../kitchen/fields.tsx';
import { readPlain, within } from '../kitchen/reading.ts';
import { RowChooser } from '../panel/choosers.tsx';
import {
  bendOfKind,
  hasRadius,
  outlets,
  roundSizes,
  type SearchFields,
  searchBends,
  searchMaterials,
  stepChoices,
} from './fields.ts';

const says = words.routeSearch.form;

interface SearchFormProps {
  readonly fields: SearchFields;
  readonly onChange: (change: Partial<SearchFields>) => void;
}

/** With what and through what the duct may go. */
export function SearchForm({ fields, onChange }: SearchFormProps) {
  const units = useBoard((state) => state.units);
  const exits = useBoard((state) => state.job.exits);
  const sizes = roundSizes(units, fields.duct);
  const steps = stepChoices(units);
  const show = (metres: number) => formatLength(metres, units, { atLeast: 16 });
  return (
    <div className="search-form">
      <CheckboxGroup
        className="exit-choice"
        value={[...fields.exits]}
        onChange={(chosen) => onChange({ exits: chosen })}
      >
        <Label>{says.exits}</Label>
        {exits.map((exit) => (
          <Checkbox key={exit.id} value={exit.id} className="tick">
            <span className="tick-box" aria-hidden="true" />
            {exit.name.trim() || exit.kind}
          </Checkbox>
        ))}
      </CheckboxGroup>
      <SpaceFields fields={fields} onChange={onChange} />
      <div className="field-grid">
        <Choice
          label={says.duct}
          choices={sizes}
          value={
            sizes.find(({ section }) => Math.abs(section.diameter - fields.duct.diameter) < 1e-6)?.id ?? null
          }
          onChoose={(id) => {
            const size = sizes.find((row) => row.id === id);
            if (size) onChange({ duct: size.section });
          }}
        />
        <Choice
          label={says.collarPoints}
          choices={outlets}
          value={outlets.find(({ direction }) => direction === fields.outlet)?.id ?? null}
          onChoose={(id) => {
            const outlet = outlets.find((row) => row.id === id);
            if (outlet) onChange({ outlet: outlet.direction });
          }}
        />
        <RowChooser
          label={says.bend}
          rows={searchBends}
          value={fields.bend.kind}
          onChoose={(kind) => onChange({ bend: bendOfKind(kind) })}
        />
        {hasRadius(fields.bend.kind) && (
          <QuantityField
            label={says.ratio}
            value={formatTrimmed(fields.bend.radiusRatio)}
            parse={(text) => readPlain(text, { what: says.ratio, low: 0.5, high: 5 })}
            onCommit={(radiusRatio) => onChange({ bend: { ...fields.bend, radiusRatio } })}
          />
        )}
        <RowChooser
          label={says.material}
          rows={searchMaterials}
          value={fields.material}
          onChoose={(material) => onChange({ material })}
        />
        <QuantityField
          label={says.clearance}
          value={show(fields.clearance)}
          parse={(text) => within(parseLength(text, units), 0, 0.3, says.clearanceRange, show)}
          onCommit={(clearance) => onChange({ clearance })}
        />
        <Choice
          label={says.grid}
          choices={steps}
          value={steps.find(({ step }) => Math.abs(step - fields.step) < 1e-6)?.id ?? null}
          placeholder={show(fields.step)}
          onChoose={(id) => {
            const chosen = steps.find((row) => row.id === id);
            if (chosen) onChange({ step: chosen.step });
          }}
        />
      </div>
    </div>
  );
}

function SpaceFields({ fields, onChange }: SearchFormProps) {
  const units = useBoard((state) => state.units);
  const working = useBoard((state) => state.workingHeight);
  const { space } = fields;
  const show = (metres: number) => formatLength(metres, units);
  return (
    <div className="search-space">
      <ToggleButtonGroup
        className="switch"
        aria-label={says.where}
        selectionMode="single"
        disallowEmptySelection
        selectedKeys={[space.kind]}
        onSelectionChange={([key]) =>
          onChange({ space: key === 'level' ? { kind: 'level', height: working } : { kind: 'whole' } })
        }
      >
        <ToggleButton id="whole">{says.wholeSpace}</ToggleButton>
        <ToggleButton id="level">{says.oneHeight}</ToggleButton>
      </ToggleButtonGroup>
      {space.kind === 'level' && (
        <QuantityField
          label={says.height}
          value={show(space.height)}
          parse={(text) => within(parseLength(text, units), 0.3, 20, says.heightRange, show)}
          onCommit={(height) => onChange({ space: { kind: 'level', height } })}
        />
      )}
    </div>
  );
}
