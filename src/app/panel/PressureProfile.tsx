import { scaleLinear } from 'd3-scale';
import type { ProfilePoint } from '../../graph/solution.ts';
import { formatRun, quantity } from '../../units/index.ts';
import { useBoard } from '../context.ts';
import { polyline } from './polyline.ts';

const width = 272;
const height = 132;
const inside = { left: 38, right: width - 4, top: 22, bottom: height - 18 };

/** Total and static pressure against the way from the hood; what is pointed at stands out. */
export function PressureProfile({ profile }: { profile: readonly ProfilePoint[] }) {
  const units = useBoard((state) => state.units);
  const hover = useBoard((state) => state.hover);
  const end = profile.at(-1)?.distance ?? 0;
  if (profile.length < 2 || end <= 0) return null;
  const shown = (pressure: number) => quantity('pressure', pressure, units).value;
  const values = profile.flatMap((point) => [shown(point.total), shown(point.static)]);
  const most = Math.max(...values);
  const least = Math.min(...values);
  const x = scaleLinear([0, end], [inside.left, inside.right]);
  const y = scaleLinear([least < -0.01 * most ? least : 0, most], [inside.bottom, inside.top]).nice(3);
  const path = (of: 'total' | 'static', points: readonly ProfilePoint[]) =>
    polyline(points.map((point) => [x(point.distance), y(shown(point[of]))]));
  const pointedAt = profile.flatMap((point, i) => {
    const from = profile[i - 1];
    const lit = hover.nodes.includes(point.at) || hover.segments.includes(point.at);
    return from && lit ? [[from, point] as const] : [];
  });
  const ticks = y.ticks(3);
  return (
    <figure className="chart">
      <svg
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label={`Pressure along the run of ${formatRun(end, units)}, falling to the outside`}
      >
        <text x={0} y={9} className="axis">
          {quantity('pressure', 0, units).unit}
        </text>
        {ticks.map((tick) => (
          <g key={tick}>
            <line className="grid" x1={inside.left} x2={inside.right} y1={y(tick)} y2={y(tick)} />
            <text className="axis" x={inside.left - 5} y={y(tick) + 3.5} textAnchor="end">
              {tick}
            </text>
          </g>
        ))}
        <path className="line static" d={path('static', profile)} />
        <path className="line" d={path('total', profile)} />
        {pointedAt.map(([from, to]) => (
          <path
            key={`${from.distance} ${from.total} ${to.total}`}
            className="line lit"
            d={path('total', [from, to])}
          />
        ))}
        <text className="axis" x={inside.left} y={height - 4}>
          hood
        </text>
        <text className="axis" x={inside.right} y={height - 4} textAnchor="end">
          outside, {formatRun(end, units)}
        </text>
      </svg>
      <figcaption>
        <span className="key" /> total <span className="key static" /> static
      </figcaption>
    </figure>
  );
}
