import { words } from '../../words/index.ts';
import { holds } from './search.ts';

const entries = Object.entries(words.glossary.entries).toSorted(([, a], [, b]) =>
  a.term.localeCompare(b.term),
);

function found(typed: string) {
  if (typed.trim() === '' || holds(title, typed)) return entries;
  return entries.filter(([, { term, also, text }]) => holds(`${term} ${also ?? ''} ${text}`, typed));
}

const title = words.help.sections.find(({ id }) => id === 'glossary')?.title ?? '';

/** True where a search finds a word of the trade. */
export const glossaryHas = (typed: string): boolean => found(typed).length > 0;

/** The words of the trade with what they mean, those that a search finds. */
export function Glossary({ typed }: { typed: string }) {
  return (
    <dl className="glossary">
      {found(typed).map(([id, { term, text }]) => (
        <div key={id}>
          <dt>{term}</dt>
          <dd>{text}</dd>
        </div>
      ))}
    </dl>
  );
}
