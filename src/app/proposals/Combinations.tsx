import type { Combination } from '../../advice/combinations/search.ts';
import { words } from '../../words/index.ts';
import { useAdvice } from '../context.ts';
import { ChangeCard } from './ChangeCard.tsx';

const says = words.proposals.combinations;

/** The changes that pay best together. */
export function BestTogether() {
  const { combining, combinations } = useAdvice();
  const [best] = combinations;
  if (!combining && !best) return null;
  return (
    <section className="combinations" aria-busy={combining}>
      <h2>{says.best}</h2>
      {best && !combining ? (
        <Cards combinations={[best]} title={says.best} />
      ) : (
        <p className="lead">{says.trying}</p>
      )}
    </section>
  );
}

/** Those that come after it. */
export function OtherCombinations() {
  const { combining, combinations } = useAdvice();
  const others = combinations.slice(1);
  if (combining || others.length === 0) return null;
  return (
    <section>
      <h2>{says.others}</h2>
      <Cards combinations={others} title={says.others} />
    </section>
  );
}

function Cards({ combinations, title }: { combinations: readonly Combination[]; title: string }) {
  const most = useAdvice().combinations[0]?.gain ?? 0;
  return (
    <ol className="proposal-list" aria-label={title}>
      {combinations.map((combination) => (
        <ChangeCard
          key={combination.id}
          kind="combination"
          change={combination}
          members={combination.members}
          calls={combination.calls}
          most={most}
        />
      ))}
    </ol>
  );
}
