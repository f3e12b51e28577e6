import { Button, Disclosure, DisclosurePanel, Heading } from 'react-aria-components';
import type { Provenance } from '../../hydraulics/types.ts';
import { words } from '../../words/index.ts';
import { Icon } from '../icons.tsx';

const says = words.panels.source;

const kinds: Record<Provenance['sourceKind'], string> = {
  found: says.kinds.found,
  memory: says.kinds.memory,
  'common practice': says.kinds.practice,
  assumption: says.kinds.assumption,
};

/** Where a number comes from: its catalogue row, its source, and what was done to it. */
export function Source({ of, title }: { of: Provenance; title: string }) {
  return (
    <Disclosure className="source-note">
      <Heading>
        <Button slot="trigger">
          <Icon name="down" size={14} />
          {title}
        </Button>
      </Heading>
      <DisclosurePanel>
        <p>
          {of.source} <em>({kinds[of.sourceKind]})</em>
        </p>
        {of.notes.length > 0 && (
          <ul>
            {of.notes.map((note) => (
              <li key={note}>{note}</li>
            ))}
          </ul>
        )}
        <p className="row-id">
          {says.row} <code>{of.row}</code>
        </p>
      </DisclosurePanel>
    </Disclosure>
  );
}
