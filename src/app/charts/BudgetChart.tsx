import { scaleLinear } from 'd3-scale';
import { nothing } from '../../canvas/board.ts';
import { type BudgetPart, pressureBudget } from '../../graph/budget.ts';
import type { Solved } from '../../graph/solution.ts';
import { formatPressure } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useApp, useBoard } from '../context.ts';
import type { ChartSize } from '../panel/chart-size.ts';
import { capitalized, percent } from '../wording.ts';

const causes = words.causes.pressure;

const ROW = 26;
const LABEL = 104;
const FIGURE = 128;

/** What uses up the fan's pressure, a bar each; the sheets show where it is, and the other way round. */
export function BudgetChart({ solved, size: { width } }: { solved: Solved; size: ChartSize }) {
  const { board } = useApp();
  const units = useBoard((state) => state.units);
  const hover = useBoard((state) => state.hover);
  const parts = pressureBudget(solved);
  const most = Math.max(...parts.map(({ loss }) => Math.abs(loss)), Number.MIN_VALUE);
  const x = scaleLinear([0, most], [0, width - LABEL - FIGURE]);
  const height = parts.length * ROW;
  return (
    <figure className="chart budget-chart">
      <svg
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label={words.charts.budget.label(
          parts.map((part) => `${causes[part.cause]} ${formatPressure(part.loss, units)}`).join(', '),
        )}
        onPointerLeave={() => board.set({ hover: nothing })}
      >
        {parts.map((part, i) => (
          <g
            key={part.cause}
            className={['part', isLit(part, hover) && 'lit', Math.abs(part.loss) === most && 'most']
              .filter(Boolean)
              .join(' ')}
            transform={`translate(0 ${i * ROW})`}
            onPointerEnter={() => board.set({ hover: { nodes: part.nodes, segments: part.segments } })}
          >
            <rect className="pointing" width={width} height={ROW} />
            <text x={0} y={ROW / 2 + 4}>
              {capitalized(causes[part.cause])}
            </text>
            <rect
              className={part.loss < 0 ? 'amount gives' : 'amount'}
              x={LABEL}
              y={6}
              width={Math.max(1, x(Math.abs(part.loss)))}
              height={ROW - 12}
            />
            <text x={LABEL + x(Math.abs(part.loss)) + 7} y={ROW / 2 + 4} className="amount-text">
              {formatPressure(part.loss, units)}, {percent(part.share)}
            </text>
          </g>
        ))}
      </svg>
    </figure>
  );
}

function isLit(
  part: BudgetPart,
  hover: { readonly nodes: readonly string[]; readonly segments: readonly string[] },
): boolean {
  return (
    part.nodes.some((id) => hover.nodes.includes(id)) ||
    part.segments.some((id) => hover.segments.includes(id))
  );
}
