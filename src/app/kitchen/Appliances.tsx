import { Checkbox, CheckboxGroup, Label } from 'react-aria-components';
import { applianceLimit } from '../../graph/house.ts';
import { IconButton } from '../controls.tsx';
import { Icon } from '../icons.tsx';
import { appliances, type ChangeHouse, unknownAppliances, withAppliance } from './house.ts';

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
            onChange('change combustion appliances', {
              combustion: withAppliance(names, changed, next.includes(changed.id)),
            });
        }}
      >
        <Label>Burning appliances that take air from the house</Label>
        {appliances.map((row) => (
          <Checkbox key={row.id} value={row.id} className="check">
            <span className="check-box">
              <Icon name="tick" size={14} />
            </span>
            <span>
              {row.name}
              <small>
                {row.what} Limit {row.printed.replace('-', '−')}.
              </small>
            </span>
          </Checkbox>
        ))}
      </CheckboxGroup>
      {unknownAppliances(names).map((name) => (
        <p key={name} className="unknown-appliance">
          <span>“{name}” is not in the catalogue, so no limit is known for it.</span>
          <IconButton
            icon="remove"
            label={`Take out ${name}`}
            placement="left"
            onPress={() =>
              onChange('change combustion appliances', { combustion: names.filter((each) => each !== name) })
            }
          />
        </p>
      ))}
    </div>
  );
}
