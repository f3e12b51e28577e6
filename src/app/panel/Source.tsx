import { Button, Disclosure, DisclosurePanel, Heading } from 'react-aria-components';
import type { Provenance } from '../../hydraulics/types.ts';
import { Icon } from '../icons.tsx';

const kinds: Record<Provenance['sourceKind'], string> = {
  found: 'read in the source',
  memory: 'from memory, not checked against a copy',
  'common practice': 'common practice, no publication',
  assumption: 'an assumption',
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
          Catalogue row <code>{of.row}</code>
        </p>
      </DisclosurePanel>
    </Disclosure>
  );
}
