import { scaleLinear } from 'd3-scale';
import type { Hood } from '../../graph/document.ts';
import { speedCurve } from '../../graph/speeds.ts';
import { systemCurve } from '../../graph/system-curve.ts';
import { fanTotalPressure, freeDelivery } from '../../hydraulics/fan.ts';
import { quantity } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useBoard } from '../context.ts';
import { Term } from '../term/Term.tsx';
import { type ChartSize, narrowWidth } from './chart-size.ts';
import { polyline } from './polyline.ts';

const says = words.charts.fan;

const narrow: ChartSize = { width: narrowWidth, height: 172 };
const SAMPLES = 48;

interface FanChartProps {
  readonly hood: Hood;
  /** Index into the solution's speeds: the one that stands out; the desk's own where absent. */
  readonly speed?: number;
  readonly size?: ChartSize;
}

/** Total pressure against flow at every speed, in this job's air, with the point where each one works. */
export function FanChart({ hood, speed: asked, size: { width, height } = narrow }: FanChartProps) {
  const inside = { left: 38, right: width - 8, top: 22, bottom: height - 20 };
  const units = useBoard((state) => state.units);
  const air = useBoard((state) => state.solution.air);
  const job = useBoard((state) => state.live);
  const solution = useBoard((state) => state.solution);
  const { speeds } = solution;
  const chosen = useBoard((state) => asked ?? state.speed);
  const flowShown = (flow: number) => quantity('flow', flow, units).value;
  const pressureShown = (pressure: number) => quantity('pressure', pressure, units).value;
  const curves = hood.speeds.flatMap((speed, index) => {
    const known = speedCurve(hood, index);
    if (!known.known) return [];
    const { curve } = known;
    const end = freeDelivery(curve);
    const points = Array.from({ length: SAMPLES + 1 }, (_, i): [number, number] => {
      const flow = (end * i) / SAMPLES;
      return [flowShown(flow), pressureShown(fanTotalPressure(curve, flow, air))];
    });
    const result = speeds.findIndex((s) => s.hood === hood.id && s.speed === index);
    return [{ name: speed.name, points, result, end }];
  });
  if (curves.length === 0) return null;
  const all = curves.flatMap((curve) => curve.points);
  const x = scaleLinear([0, Math.max(...all.map(([flow]) => flow))], [inside.left, inside.right]);
  const y = scaleLinear(
    [0, Math.max(...all.map(([, pressure]) => pressure))],
    [inside.bottom, inside.top],
  ).nice(4);
  const mostFlow = Math.max(...curves.map(({ end }) => end));
  const [, mostPressure = 0] = y.domain();
  const system = systemCurve(
    job,
    solution,
    speeds[chosen]?.hood === hood.id ? chosen : -1,
    Array.from({ length: SAMPLES + 1 }, (_, i) => (mostFlow * i) / SAMPLES),
  )
    .map(([flow, pressure]): [number, number] => [flowShown(flow), pressureShown(pressure)])
    .filter(([, pressure]) => pressure <= mostPressure);
  const path = (points: readonly [number, number][]) =>
    polyline(points.map(([flow, pressure]) => [x(flow), y(pressure)]));
  return (
    <figure className="chart">
      <svg viewBox={`0 0 ${width} ${height}`} role="img" aria-label={says.label}>
        <text x={0} y={9} className="axis">
          {quantity('pressure', 0, units).unit}
        </text>
        {y.ticks(4).map((tick) => (
          <g key={tick}>
            <line className="grid" x1={inside.left} x2={inside.right} y1={y(tick)} y2={y(tick)} />
            <text className="axis" x={inside.left - 5} y={y(tick) + 3.5} textAnchor="end">
              {tick}
            </text>
          </g>
        ))}
        {x.ticks(4).map((tick, i) => (
          <text
            key={tick}
            className="axis"
            x={x(tick)}
            y={height - 6}
            textAnchor={i === 0 ? 'start' : 'middle'}
          >
            {i === 0 ? `0 ${quantity('flow', 0, units).unit}` : tick}
          </text>
        ))}
        {curves.map(({ name, points, result }) => (
          <path key={name} className={result === chosen ? 'line' : 'line faint'} d={path(points)} />
        ))}
        {system.length > 0 && <path className="line system" d={path(system)} />}
        {curves.map(({ name, result }) => {
          const outcome = speeds[result]?.outcome;
          if (!outcome?.solved) return null;
          const [px, py] = [x(flowShown(outcome.flow)), y(pressureShown(outcome.totalPressure))];
          return (
            <g key={name} className={result === chosen ? 'works chosen' : 'works'}>
              <circle cx={px} cy={py} r={3.5} />
              <text x={px + 6} y={py - 5} className="axis">
                {name}
              </text>
            </g>
          );
        })}
      </svg>
      <figcaption>
        {says.caption}
        {system.length > 0 && (
          <>
            {' '}
            <span className="keyed">
              <span className="key system" /> <Term of="systemCurve">{says.system}</Term>
            </span>
          </>
        )}
      </figcaption>
    </figure>
  );
}
