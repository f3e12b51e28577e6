import { Button, Disclosure, DisclosurePanel, Heading } from 'react-aria-components';
import { words } from '../../words/index.ts';
import { useBoard } from '../context.ts';
import { HoodEditor } from '../hood/HoodEditor.tsx';
import { Icon } from '../icons.tsx';

const says = words.kitchen.hoods;

/** Every hood of the job, to be opened and edited wherever it stands. */
export function Hoods() {
  const hoods = useBoard((state) => state.live.hoods);
  return (
    <section className="details" aria-label={says.several}>
      <h3>{hoods.length === 1 ? says.one : says.several}</h3>
      {hoods.map((hood) => (
        <Disclosure key={hood.id} className="source-note hood-note">
          <Heading level={4}>
            <Button slot="trigger">
              <Icon name="down" size={14} />
              {hood.name}
            </Button>
          </Heading>
          <DisclosurePanel>
            <HoodEditor id={hood.id} />
          </DisclosurePanel>
        </Disclosure>
      ))}
    </section>
  );
}
