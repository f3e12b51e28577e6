import { Button } from 'react-aria-components';
import { formatFlow, parseFlow } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useBoard } from '../context.ts';
import { IconButton, QuantityField } from '../controls.tsx';
import type { ChangeHouse, DrawnHouse } from './house.ts';
import { NameField } from './NameField.tsx';

const says = words.kitchen.otherExhaust;

/** A clothes dryer, to start a new fan with: about 150 cfm (common practice). */
const ordinaryFlow = 0.07;

interface OtherExhaustProps {
  readonly fans: DrawnHouse['otherExhaust'];
  readonly onChange: ChangeHouse;
}

/** Other fans that may blow out of the house while the hood runs. */
export function OtherExhaust({ fans, onChange }: OtherExhaustProps) {
  const units = useBoard((state) => state.units);
  const replace = (label: string, at: number, fan: Partial<DrawnHouse['otherExhaust'][number]>) =>
    onChange(label, { otherExhaust: fans.map((each, i) => (i === at ? { ...each, ...fan } : each)) });
  return (
    <div className="part">
      <h4>{says.heading}</h4>
      {fans.map((fan, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a fan has no other name than its place in the list
        <div className="fan-row" key={i}>
          <NameField
            label={says.name(i + 1)}
            value={fan.name}
            onCommit={(name) => replace(words.edits.house.renameFan, i, { name })}
          />
          <QuantityField
            label={says.flow(fan.name || says.fan(i + 1))}
            value={formatFlow(fan.flow, units)}
            parse={(text) => parseFlow(text, units)}
            onCommit={(flow) => replace(words.edits.house.otherExhaust, i, { flow })}
          />
          <IconButton
            icon="remove"
            label={says.takeOut(fan.name || says.fan(i + 1))}
            placement="left"
            onPress={() =>
              onChange(words.edits.house.takeOutFan, { otherExhaust: fans.filter((_, j) => j !== i) })
            }
          />
        </div>
      ))}
      <Button
        className="text-button"
        onPress={() =>
          onChange(words.edits.house.addFan, {
            otherExhaust: [...fans, { name: says.dryer, flow: ordinaryFlow }],
          })
        }
      >
        {says.add}
      </Button>
    </div>
  );
}
