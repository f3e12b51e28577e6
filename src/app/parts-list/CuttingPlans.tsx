import { type KeyboardEvent, type RefObject, useEffect, useRef, useState } from 'react';
import { stockWords } from '../../advice/parts/amount.ts';
import { type CuttingPlan, cuttingOf } from '../../advice/parts/plan.ts';
import { type BarBox, type BarDrawing, barDrawings } from '../../drawing/cutting-bars.ts';
import { type Places, placesOf } from '../../graph/places.ts';
import { sectionWords } from '../../graph/sections.ts';
import { findMaterial } from '../../hydraulics/catalogue.ts';
import { formatLength, formatPercent } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useBoard } from '../context.ts';
import { rovingStep } from '../explain/roving.ts';
import { usePointing } from '../pointing.ts';

const says = words.partsList.dock;

/** px: for the number of a stock length, its height, and the line of labels below. */
const [numbers, tall, labels] = [34, 22, 15];
/** px of a character of a label, about. */
const character = 6.1;

/** Each stock length to scale with its cuts; the pieces and the sheets point at one another. */
export function CuttingPlans() {
  const job = useBoard((state) => state.job);
  const schemeId = useBoard((state) => state.schemeId);
  const { plans, route } = cuttingOf(job, schemeId);
  const places = placesOf(route, job.blocks);
  const box = useRef<HTMLDivElement>(null);
  const width = useWidth(box);
  const longest = Math.max(...plans.map(({ stock }) => stock));
  const scale = Math.max(0, width - numbers - 2) / longest;
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the keys move among the pieces in it
    <div ref={box} className="cutting-plans" onKeyDown={roam}>
      {scale > 0 &&
        plans.map((plan, i) => (
          <PlanDrawing key={plan.key} plan={plan} scale={scale} places={places} first={i === 0} />
        ))}
    </div>
  );
}

function useWidth(box: RefObject<HTMLElement | null>): number {
  const [width, setWidth] = useState(0);
  useEffect(() => {
    const element = box.current;
    if (!element) return;
    const observer = new ResizeObserver(() => setWidth(element.clientWidth));
    observer.observe(element);
    setWidth(element.clientWidth);
    return () => observer.disconnect();
  }, [box]);
  return width;
}

/** One stop of the Tab key for all pieces: the arrows, Home and End move among them. */
function roam(event: KeyboardEvent<HTMLElement>): void {
  const all = [...event.currentTarget.querySelectorAll<SVGGElement>('[data-piece]')];
  const at = all.indexOf(event.target as SVGGElement);
  const next = at < 0 ? undefined : rovingStep(event.key, at, all.length);
  if (next === undefined) return;
  event.preventDefault();
  for (const [i, piece] of all.entries()) piece.setAttribute('tabindex', i === next ? '0' : '-1');
  all[next]?.focus();
}

interface PlanProps {
  readonly plan: CuttingPlan;
  /** px a metre. */
  readonly scale: number;
  readonly places: Places;
  /** The one whose first piece the Tab key comes to. */
  readonly first: boolean;
}

function PlanDrawing({ plan, scale, places, first }: PlanProps) {
  const units = useBoard((state) => state.units);
  const { section, material, bars, stock, waste, proved } = plan;
  const what = `${sectionWords(section, units)} ${(findMaterial(material)?.name ?? material).toLowerCase()}`;
  const buy = stockWords({ stock: { count: bars.length, length: stock } }, units) ?? '';
  const drawn = barDrawings(plan, {
    scale,
    textWidth: (text) => character * text.length,
    piece: (metres) => formatLength(metres, units),
    left: (metres) => says.left(formatLength(metres, units)),
  });
  return (
    <figure className="cutting-plan">
      <figcaption>
        {says.plan(what, buy, formatPercent(waste))}
        {proved && <small> {says.proved}</small>}
      </figcaption>
      {drawn.map((bar, i) => (
        <StockLength
          key={bar.first}
          bar={bar}
          length={formatLength(stock, units)}
          places={places}
          first={first && i === 0}
        />
      ))}
    </figure>
  );
}

interface LengthProps {
  readonly bar: BarDrawing;
  readonly length: string;
  readonly places: Places;
  readonly first: boolean;
}

function StockLength({ bar, length, places, first }: LengthProps) {
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be a drawing
    <svg
      className="stock-length"
      width={numbers + bar.width + 2}
      height={tall + 2 + (bar.labelsBelow ? labels : 0)}
      role="group"
      aria-label={says.bar(says.numbers(bar.first, bar.last), length)}
    >
      <text className="bar-number" x={numbers - 8} y={tall / 2 + 5}>
        {says.times(bar.last - bar.first + 1)}
      </text>
      <g transform={`translate(${numbers} 1)`}>
        {bar.boxes.map((box, i) =>
          box.cut ? (
            <Piece
              key={box.x}
              box={box}
              segments={box.cut.segments}
              where={box.cut.segments.map(places.leg).join(says.and)}
              first={first && i === 0}
            />
          ) : (
            <g key={box.x} className="offcut">
              <rect x={box.x} width={box.width} height={tall} />
              <Label box={box} />
            </g>
          ),
        )}
      </g>
    </svg>
  );
}

interface PieceProps {
  readonly box: BarBox;
  readonly segments: readonly string[];
  readonly where: string;
  readonly first: boolean;
}

function Piece({ box, segments, where, first }: PieceProps) {
  const { lit, point, leave, choose } = usePointing({ nodes: [], segments });
  return (
    // biome-ignore lint/a11y/useSemanticElements: a button of HTML cannot stand in a drawing
    <g
      className="piece"
      data-piece
      data-lit={lit || undefined}
      role="button"
      tabIndex={first ? 0 : -1}
      aria-label={says.piece(box.label, where)}
      onPointerEnter={point}
      onPointerLeave={leave}
      onFocus={point}
      onBlur={leave}
      onClick={choose}
      onKeyDown={(event) => {
        if (event.key !== 'Enter' && event.key !== ' ') return;
        event.preventDefault();
        choose();
      }}
    >
      <title>{says.piece(box.label, where)}</title>
      <rect x={box.x} width={box.width} height={tall} />
      {box.lap !== null && <path className="lap" d={`M${box.lap} 0V${tall}`} />}
      <Label box={box} />
    </g>
  );
}

function Label({ box: { x, width, label, inside, at } }: { box: BarBox }) {
  if (inside)
    return (
      <text x={at} y={tall / 2 + 4}>
        {label}
      </text>
    );
  return (
    <>
      <path className="leader" d={`M${x + width / 2} ${tall}L${at} ${tall + 4}`} />
      <text x={at} y={tall + labels - 2}>
        {label}
      </text>
    </>
  );
}
