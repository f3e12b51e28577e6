import './chart-words.css';
import { scaleLinear } from 'd3-scale';
import type { PointerEvent } from 'react';
import { nothing } from '../../canvas/board.ts';
import type { Solved } from '../../graph/solution.ts';
import { formatPressure, formatRun, quantity } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useApp, useBoard } from '../context.ts';
import { Term } from '../term/Term.tsx';
import { percent } from '../wording.ts';
import { tickTexts } from './chart-labels.ts';
import { type ChartSize, narrowWidth } from './chart-size.ts';
import { polyline } from './polyline.ts';
import { type ProfileStep, placeName, profileSteps } from './profile-steps.ts';

const says = words.charts.profile;

const narrow: ChartSize = { width: narrowWidth, height: 132 };
/** Units of the drawing within which the pointer means what stands at one place of the run. */
const NEAR = 7;

interface ProfileProps {
  readonly solved: Solved;
  readonly size?: ChartSize;
}

/** Total and static pressure against the way from the hood, linked with the sheets both ways. */
export function PressureProfile({ solved, size: { width, height } = narrow }: ProfileProps) {
  const inside = { left: 38, right: width - 4, top: 22, bottom: height - 18 };
  const { board } = useApp();
  const units = useBoard((state) => state.units);
  const hover = useBoard((state) => state.hover);
  const route = useBoard((state) => state.solution.route);
  const { profile } = solved;
  const end = profile.at(-1)?.distance ?? 0;
  if (profile.length < 2 || end <= 0) return null;
  const shown = (pressure: number) => quantity('pressure', pressure, units).value;
  const values = profile.flatMap((point) => [shown(point.total), shown(point.static)]);
  const most = Math.max(...values);
  const least = Math.min(...values);
  const x = scaleLinear([0, end], [inside.left, inside.right]);
  const y = scaleLinear([least < -0.01 * most ? least : 0, most], [inside.bottom, inside.top]).nice(3);
  const path = (of: 'total' | 'static', points: Solved['profile']) =>
    polyline(points.map((point) => [x(point.distance), y(shown(point[of]))]));
  const steps = profileSteps(solved, route);
  const lit = steps.filter(({ place }) =>
    route.segments.has(place) ? hover.segments.includes(place) : hover.nodes.includes(place),
  );
  const ticks = y.ticks(3);
  const tickText = tickTexts(ticks);
  const taken = lit.reduce((sum, { loss }) => sum + loss, 0);
  const first = profile[0];
  const last = profile.findLast(({ distance }) => distance < end);
  const pointTo = (event: PointerEvent<SVGSVGElement>) => {
    const box = event.currentTarget.getBoundingClientRect();
    const px = ((event.clientX - box.left) / box.width) * width;
    const place = placeAt(steps, px, x);
    if (place === null) board.set({ hover: nothing });
    else
      board.set({
        hover: route.segments.has(place)
          ? { nodes: [], segments: [place] }
          : { nodes: [place], segments: [] },
      });
  };
  return (
    <figure className="chart">
      <svg
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label={says.label(formatRun(end, units))}
        onPointerMove={pointTo}
        onPointerLeave={() => board.set({ hover: nothing })}
      >
        <rect className="pointing" width={width} height={height} />
        <text x={0} y={9} className="axis">
          {quantity('pressure', 0, units).unit}
        </text>
        {ticks.map((tick, i) => (
          <g key={tick}>
            <line className="grid" x1={inside.left} x2={inside.right} y1={y(tick)} y2={y(tick)} />
            <text className="axis" x={inside.left - 5} y={y(tick) + 3.5} textAnchor="end">
              {tickText[i]}
            </text>
          </g>
        ))}
        <path className="line static" d={path('static', profile)} />
        <path className="line" d={path('total', profile)} />
        {lit.map(({ from, to }) => (
          <path
            key={`${from.distance} ${from.total} ${to.total}`}
            className="line lit"
            d={path('total', [from, to])}
          />
        ))}
        {/* Lines that fall leave room over their beginning and under their end. */}
        {first && last && (
          <>
            <text className="axis on-line chosen" x={inside.left + 4} y={y(shown(first.total)) - 5}>
              {says.total}
            </text>
            <text
              className="axis on-line"
              x={inside.right - 6}
              y={Math.min(inside.bottom - 4, y(shown(last.static)) + 14)}
              textAnchor="end"
            >
              {says.static}
            </text>
          </>
        )}
        <text className="axis" x={inside.left} y={height - 4}>
          {says.hood}
        </text>
        <text className="axis" x={inside.right} y={height - 4} textAnchor="end">
          {says.outside(formatRun(end, units))}
        </text>
      </svg>
      <figcaption>
        {lit[0] ? (
          says.takes(
            placeName(route, lit[0].place),
            formatPressure(taken, units),
            percent(taken / solved.totalPressure),
          )
        ) : (
          <>
            <Term of="totalPressure">{says.totalPressure}</Term>{' '}
            <Term of="staticPressure">{says.staticPressure}</Term>{' '}
            <span className="chart-hint">{says.point}</span>
          </>
        )}
      </figcaption>
    </figure>
  );
}

/** The place of the run that a point of the chart means: a node where it is near, else the leg. */
function placeAt(steps: readonly ProfileStep[], px: number, x: (distance: number) => number): string | null {
  const at = (step: ProfileStep) => x(step.to.distance);
  const standing = steps
    .filter((step) => step.along === 0)
    .sort((a, b) => Math.abs(at(a) - px) - Math.abs(at(b) - px))[0];
  if (standing && Math.abs(at(standing) - px) < NEAR) return standing.place;
  const leg = steps.find((step) => step.along > 0 && x(step.from.distance) <= px && px <= at(step));
  return leg?.place ?? null;
}
