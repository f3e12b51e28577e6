import { type Cause, causes, type SchemeFigures } from '../../advice/compare/figures.ts';
import { formatPressure, type System } from '../../units/index.ts';

/** How each cause is filled: a shade and, for print and for those who see no shades, a pattern. */
const look: Readonly<Record<Cause, string>> = {
  'straight duct': 'plain',
  bends: 'accent',
  'changes of size': 'dots',
  cap: 'hatch',
  'parts in line': 'cross',
  junctions: 'lines',
  house: 'open',
};

/** Where one scheme's pressure goes, as a bar whose whole width is the largest budget of all. */
export function BudgetBar({ scheme, most, units }: { scheme: SchemeFigures; most: number; units: System }) {
  const parts: { cause: Cause; loss: number; from: number }[] = [];
  let from = 0;
  for (const cause of causes) {
    const loss = Math.max(0, scheme.budget.get(cause) ?? 0);
    if (loss > 0) parts.push({ cause, loss, from });
    from += loss;
  }
  const words = parts.map(({ cause, loss }) => `${cause} ${formatPressure(loss, units)}`).join(', ');
  return (
    <svg className="budget" viewBox="0 0 100 12" preserveAspectRatio="none" role="img" aria-label={words}>
      {parts.map(({ cause, loss, from: start }) => (
        <rect
          key={cause}
          x={(100 * start) / most}
          y="0.5"
          width={(100 * loss) / most}
          height="11"
          fill={`url(#budget-${look[cause]})`}
          stroke="var(--ink)"
          strokeWidth="1"
          vectorEffect="non-scaling-stroke"
        />
      ))}
    </svg>
  );
}

/** The patterns, once a page. */
export function BudgetPatterns() {
  return (
    <svg width="0" height="0" className="budget-patterns" aria-hidden="true">
      <defs>
        {Object.values(look).map((name) => (
          <pattern key={name} id={`budget-${name}`} width="4" height="4" patternUnits="userSpaceOnUse">
            <rect width="4" height="4" fill={fills[name] ?? 'var(--sheet)'} />
            {marks[name] && <path d={marks[name]} stroke="var(--ink)" strokeWidth="0.5" fill="none" />}
          </pattern>
        ))}
      </defs>
    </svg>
  );
}

const fills: Readonly<Record<string, string>> = {
  plain: 'var(--muted)',
  accent: 'var(--accent)',
  hatch: 'var(--budget-cap)',
  house: 'var(--sheet)',
};
const marks: Readonly<Record<string, string>> = {
  dots: 'M1 2h2',
  hatch: 'M0 4 4 0',
  cross: 'M0 2h4M2 0v4',
  lines: 'M0 1h4M0 3h4',
};

/** One line a cause with the pressure that it takes in each scheme: the table behind the bars. */
export function BudgetKey({ causes: shown }: { causes: readonly Cause[] }) {
  return (
    <ul className="budget-key">
      {shown.map((cause) => (
        <li key={cause}>
          <svg width="14" height="10" aria-hidden="true">
            <rect
              x="0.5"
              y="0.5"
              width="13"
              height="9"
              fill={`url(#budget-${look[cause]})`}
              stroke="var(--ink)"
            />
          </svg>
          {cause}
        </li>
      ))}
    </ul>
  );
}
