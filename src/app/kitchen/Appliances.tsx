import { Checkbox, CheckboxGroup, Label } from 'react-aria-components';
import { applianceLimit } from '../../graph/house.ts';
import { words } from '../../words/index.ts';
import { IconButton } from '../controls.tsx';
import { Icon } from '../icons.tsx';
import { Marked } from '../Marked.tsx';
import { Term } from '../term/Term.tsx';
import { appliances, type ChangeHouse, unknownAppliances, withAppliance } from './house.ts';

const says = words.kitchen.appliances;

/** The combustion appliances that draw their air from the house, from the catalogue's limits. */
export function Appliances({ names, onChange }: { names: readonly string[]; onChange: ChangeHouse }) {
  const chosen = names.flatMap((name) => applianceLimit(name)?.id ?? []);
  return (
    <div className="part">
      <CheckboxGroup
        className="checks"
        value={chosen}
        onChange={(next) => {
          const changed = appliances.find((row) => next.includes(row.id) !== chosen.includes(row.id));
          if (changed)
            onChange(words.edits.house.appliances, {
              combustion: withAppliance(names, changed, next.includes(changed.id)),
            });
        }}
      >
        <Label>{says.label}</Label>
        {appliances.map((row) => (
          <Checkbox key={row.id} value={row.id} className="check">
            <span className="check-box">
              <Icon name="tick" size={14} />
            </span>
            <span>
              {row.name}
              <small>{says.limit(row.what, row.printed.replace('-', '−'))}</small>
            </span>
          </Checkbox>
        ))}
      </CheckboxGroup>
      <p className="hint">
        <Marked text={says.spillage} as={(text) => <Term of="backDraughting">{text}</Term>} />
      </p>
      {unknownAppliances(names).map((name) => (
        <p key={name} className="unknown-appliance">
          <span>{says.unknown(name)}</span>
          <IconButton
            icon="remove"
            label={says.takeOut(name)}
            placement="left"
            onPress={() =>
              onChange(words.edits.house.appliances, { combustion: names.filter((each) => each !== name) })
            }
          />
        </p>
      ))}
    </div>
  );
}
