import './chart-words.css';
import { scaleLinear } from 'd3-scale';
import { type PointerEvent, useState } from 'react';
import type { Hood } from '../../graph/document.ts';
import { speedCurve } from '../../graph/speeds.ts';
import { systemCurve } from '../../graph/system-curve.ts';
import { fanTotalPressure, freeDelivery } from '../../hydraulics/fan.ts';
import { formatFlow, formatPressure, quantity } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useBoard } from '../context.ts';
import { Term } from '../term/Term.tsx';
import { boxOf, labelsBeside, linesApart, tickTexts } from './chart-labels.ts';
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
  const [pointed, setPointed] = useState<string | null>(null);
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
  const works = curves.flatMap(({ name, result }) => {
    const outcome = speeds[result]?.outcome;
    if (!outcome?.solved) return [];
    const { text, figure } = quantity('flow', outcome.flow, units);
    const isChosen = result === chosen;
    return [
      {
        name,
        isChosen,
        outcome,
        text: isChosen ? text : figure,
        x: x(flowShown(outcome.flow)),
        y: y(pressureShown(outcome.totalPressure)),
      },
    ];
  });
  const nameLines = linesApart(curves.map(({ points }) => y(points[0]?.[1] ?? 0) - 4));
  const names = curves.map(({ name, result }, i) => ({
    name,
    isChosen: result === chosen,
    place: { x: inside.left + 3, y: nameLines[i] ?? 0, anchor: 'start' as const },
  }));
  const inTurn = [...works].sort((a, b) => Number(b.isChosen) - Number(a.isChosen));
  const end = system.at(-1);
  const runEnd = end && { x: Math.min(x(end[0]), inside.right - 12), y: y(end[1]), text: says.run };
  const beside = labelsBeside(
    runEnd ? [...inTurn, runEnd] : inTurn,
    names.map(({ name, place }) => boxOf(name, place)),
    { ...inside, top: 0, right: width },
  );
  const runPlace = beside[inTurn.length];
  const told = works.find(({ name }) => name === pointed);
  const sayOf = ({ name, outcome }: (typeof works)[number]) =>
    says.at(name, formatFlow(outcome.flow, units), formatPressure(outcome.totalPressure, units));
  const pointTo = (event: PointerEvent<SVGSVGElement>) => {
    const box = event.currentTarget.getBoundingClientRect();
    const px = ((event.clientX - box.left) / box.width) * width;
    const [nearest] = [...works].sort((a, b) => Math.abs(a.x - px) - Math.abs(b.x - px));
    setPointed(nearest?.name ?? null);
  };
  const [flowTicks, pressureTicks] = [x.ticks(4), y.ticks(4)];
  const [flowTexts, pressureTexts] = [tickTexts(flowTicks), tickTexts(pressureTicks)];
  return (
    <figure className="chart">
      <svg
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label={says.label(works.map(sayOf).join('; '))}
        onPointerMove={pointTo}
        onPointerLeave={() => setPointed(null)}
      >
        <rect className="pointing" width={width} height={height} />
        <text x={0} y={9} className="axis">
          {quantity('pressure', 0, units).unit}
        </text>
        {pressureTicks.map((tick, i) => (
          <g key={tick}>
            <line className="grid" x1={inside.left} x2={inside.right} y1={y(tick)} y2={y(tick)} />
            <text className="axis" x={inside.left - 5} y={y(tick) + 3.5} textAnchor="end">
              {pressureTexts[i]}
            </text>
          </g>
        ))}
        {flowTicks.map((tick, i) => (
          <text
            key={tick}
            className="axis"
            x={x(tick)}
            y={height - 6}
            textAnchor={i === 0 ? 'start' : 'middle'}
          >
            {i === 0 ? `0 ${quantity('flow', 0, units).unit}` : flowTexts[i]}
          </text>
        ))}
        {curves.map(({ name, points, result }) => (
          <path key={name} className={result === chosen ? 'line' : 'line faint'} d={path(points)} />
        ))}
        {system.length > 0 && <path className="line system" d={path(system)} />}
        {names.map(({ name, isChosen, place }) => (
          <text
            key={name}
            className={isChosen ? 'axis on-line chosen' : 'axis on-line'}
            x={place.x}
            y={place.y}
          >
            {name}
          </text>
        ))}
        {runPlace && (
          <text className="axis on-line" x={runPlace.x} y={runPlace.y} textAnchor={runPlace.anchor}>
            {says.run}
          </text>
        )}
        {inTurn.map((point, i) => {
          const { name, text, isChosen } = point;
          const place = beside[i];
          return (
            <g
              key={name}
              className={['works', isChosen && 'chosen', point === told && 'pointed']
                .filter(Boolean)
                .join(' ')}
            >
              <circle cx={point.x} cy={point.y} r={3.5} />
              {place && (
                <text className="axis on-line" x={place.x} y={place.y} textAnchor={place.anchor}>
                  {text}
                </text>
              )}
            </g>
          );
        })}
      </svg>
      <figcaption>
        {told ? (
          sayOf(told)
        ) : system.length > 0 ? (
          <>
            {says.crossing} <Term of="systemCurve">{says.system}</Term>.
          </>
        ) : works.length > 0 ? (
          says.caption
        ) : (
          says.alone
        )}
      </figcaption>
    </figure>
  );
}
