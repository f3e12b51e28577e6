import { Button } from 'react-aria-components';
import { requiredAirflow } from '../../advice/required.ts';
import { formatFlow } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useApp, useBoard } from '../context.ts';

/** What the cooktop needs and by which rule; pressing it opens the kitchen. */
export function Needed() {
  const { ui } = useApp();
  const units = useBoard((state) => state.units);
  const kitchen = useBoard((state) => state.live.kitchen);
  const { governing } = requiredAirflow(kitchen);
  const [rule = ''] = governing.name.split(',');
  const name = `${rule.charAt(0).toLowerCase()}${rule.slice(1)}`;
  return (
    <Button className="needed-note" onPress={() => ui.setState({ panel: 'kitchen' })}>
      <span className="needed-key" aria-hidden="true" />
      <span>
        {words.strip.needed.needs} <strong>{formatFlow(governing.flow, units)}</strong>: {name}
      </span>
    </Button>
  );
}
