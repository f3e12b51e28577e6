import { type Cause, causes, type SchemeFigures } from '../../advice/compare/figures.ts';
import { formatPressure, type System } from '../../units/index.ts';
import { words } from '../../words/index.ts';

/** How each cause is filled: a shade and, for print and for those who see no shades, a pattern. */
const look: Readonly<Record<Cause, string>> = {
  'straight duct': 'plain',
  bends: 'accent',
  'size changes': 'dots',
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
  const label = parts
    .map(({ cause, loss }) => `${words.causes.compared[cause]} ${formatPressure(loss, units)}`)
    .join(', ');
  return (
    <svg className="budget" role="img" aria-label={label}>
      {parts.map(({ cause, loss, from: start }) => (
        <rect
          key={cause}
          x={`${(99.5 * start) / most}%`}
          y="0"
          width={`${(99.5 * loss) / most}%`}
          height="100%"
          fill={`url(#budget-${look[cause]})`}
          stroke="var(--ink)"
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
          <pattern key={name} id={`budget-${name}`} width="6" height="6" patternUnits="userSpaceOnUse">
            <rect width="6" height="6" fill={fills[name] ?? 'var(--sheet)'} />
            {marks[name] && <path d={marks[name]} stroke="var(--ink)" strokeWidth="0.75" fill="none" />}
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
  dots: 'M2 3h2',
  hatch: 'M0 6 6 0',
  cross: 'M0 3h6M3 0v6',
  lines: 'M0 1.5h6M0 4.5h6',
};

/** The figures behind a bar, each with its filling. */
export function BudgetFigures({ scheme, units }: { scheme: SchemeFigures; units: System }) {
  return (
    <ul className="budget-figures">
      {causes.map((cause) => {
        const loss = scheme.budget.get(cause) ?? 0;
        return loss === 0 ? null : (
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
            <span>{words.causes.compared[cause]}</span>
            <span>{formatPressure(loss, units)}</span>
          </li>
        );
      })}
    </ul>
  );
}
