import { words } from '../../words/index.ts';
import { useRoving } from '../explain/roving.ts';
import { Term, type TermId } from './Term.tsx';

/** Words of the fields nearby, whose labels cannot be asked themselves; one stop of the Tab key together. */
export function Terms({ of }: { of: readonly TermId[] }) {
  const roving = useRoving<HTMLUListElement>();
  return (
    <ul className="terms" aria-label={words.glossary.view.here} {...roving}>
      {of.map((id) => (
        <li key={id}>
          <Term of={id}>{words.glossary.entries[id].term}</Term>
        </li>
      ))}
    </ul>
  );
}
