import '../panel/chart-words.css';
import { scaleLinear } from 'd3-scale';
import { useDeferredValue, useMemo } from 'react';
import { tryBend } from '../../advice/lab/trial.ts';
import { formatNumber, formatTrimmed } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { tickTexts } from '../panel/chart-labels.ts';
import { polyline } from '../panel/polyline.ts';
import { useLab } from './lab-context.ts';
import { radii } from './RadiusStage.tsx';

const says = words.lab.turn.curve;

const [width, height] = [440, 168];
const inside = { left: 34, right: width - 12, top: 24, bottom: height - 20 };

/** Radii that the curve is solved at; between them it is straight. */
const steps = 10;
/** Every point solves the whole run, so that a very long one goes without the curve. */
const mostLegs = 80;

interface RadiusCurveProps {
  /** What the turn costs as it is made. */
  readonly c: number;
}

/** The loss coefficient of this kind of bend over its radius, each point solved, with the one that is tried. */
export function RadiusCurve({ c }: RadiusCurveProps) {
  const { scene, choice, speed, before } = useLab();
  const kind = useDeferredValue(choice.kind);
  const short = before.solution.route.segments.size <= mostLegs;
  const points = useMemo(() => {
    if (!short) return [];
    return Array.from({ length: steps + 1 }, (_, i) => {
      const radiusRatio = radii.least + ((radii.most - radii.least) * i) / steps;
      const { fitting } = tryBend(scene, { kind, radiusRatio }, speed);
      return fitting ? ([radiusRatio, fitting.c] as const) : null;
    }).filter((point) => point !== null);
  }, [short, scene, kind, speed]);
  if (points.length < 2 || kind !== choice.kind) return null;
  const x = scaleLinear([radii.least, radii.most], [inside.left, inside.right]);
  const y = scaleLinear(
    [0, Math.max(c, ...points.map(([, each]) => each))],
    [inside.bottom, inside.top],
  ).nice(3);
  const [ratioTicks, lossTicks] = [x.ticks(5), y.ticks(3)];
  const [ratioTexts, lossTexts] = [tickTexts(ratioTicks), tickTexts(lossTicks)];
  const withTried = [...points, [choice.radiusRatio, c] as const].sort(([a], [b]) => a - b);
  const at = { x: x(choice.radiusRatio), y: y(c) };
  const near = at.x > inside.right - 40;
  return (
    <figure className="chart radius-curve">
      <svg
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label={says.label(
          points.map(([ratio, each]) => `${formatTrimmed(ratio)}: ${formatNumber(each, 2)}`).join(', '),
        )}
      >
        <text x={0} y={10} className="axis">
          {says.loss}
        </text>
        {lossTicks.map((tick, i) => (
          <g key={tick}>
            <line className="grid" x1={inside.left} x2={inside.right} y1={y(tick)} y2={y(tick)} />
            <text className="axis" x={inside.left - 5} y={y(tick) + 3.5} textAnchor="end">
              {lossTexts[i]}
            </text>
          </g>
        ))}
        {ratioTicks.map((tick, i) => (
          <text key={tick} className="axis" x={x(tick)} y={height - 6} textAnchor="middle">
            {i === ratioTicks.length - 1 ? says.ratio(ratioTexts[i] ?? '') : ratioTexts[i]}
          </text>
        ))}
        <path className="line" d={polyline(withTried.map(([ratio, each]) => [x(ratio), y(each)]))} />
        <g className="works chosen">
          <circle cx={at.x} cy={at.y} r={4} />
          <text
            className="axis on-line"
            x={at.x + (near ? -8 : 8)}
            y={at.y - 7}
            textAnchor={near ? 'end' : 'start'}
          >
            {formatNumber(c, 2)}
          </text>
        </g>
      </svg>
      <figcaption>{says.caption}</figcaption>
    </figure>
  );
}
