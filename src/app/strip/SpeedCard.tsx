import { Button } from 'react-aria-components';
import { requiredAirflow } from '../../advice/required.ts';
import type { FigureRef } from '../../graph/derive/derivation.ts';
import type { Job } from '../../graph/document.ts';
import type { Solved, SpeedResult } from '../../graph/solution.ts';
import { speedCurve } from '../../graph/speeds.ts';
import { formatFlow, formatPressure, formatVelocity } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useApp, useBoard } from '../context.ts';
import { Explained } from '../explain/Explained.tsx';
import { useRoving } from '../explain/roving.ts';
import { beyondLimit } from '../kitchen/house.ts';
import { housePascals } from '../kitchen/reading.ts';
import { segmentName } from '../places.ts';
import { Term } from '../term/Term.tsx';
import { percent } from '../wording.ts';
import { decibels, sonesText } from './words.ts';

const says = words.strip.speed;

interface SpeedCardProps {
  readonly speed: SpeedResult;
  readonly index: number;
  /** Whether the hood is named: where there are several. */
  readonly named: boolean;
}

/** What gets out at one speed, how fast, how loud, and what it does to the house. */
export function SpeedCard({ speed, index, named }: SpeedCardProps) {
  const { board } = useApp();
  const chosen = useBoard((state) => state.speed === index);
  const roving = useRoving<HTMLElement>();
  const { outcome } = speed;
  return (
    <section
      className="speed-card"
      data-speed={speed.name}
      data-chosen={chosen || undefined}
      aria-label={says.label(speed.name)}
      {...roving}
    >
      <div className="speed-head">
        <Button className="speed-pick" aria-pressed={chosen} onPress={() => board.set({ speed: index })}>
          {named ? `${speed.hoodName}, ${speed.name}` : speed.name}
        </Button>
        {outcome.solved && <OfRated speed={speed} index={index} flow={outcome.flow} />}
      </div>
      {outcome.solved ? (
        <Results speed={speed} solved={outcome} index={index} />
      ) : (
        <span className="unsolved">{outcome.reason}</span>
      )}
    </section>
  );
}

function OfRated({ speed, index, flow }: { speed: SpeedResult; index: number; flow: number }) {
  const units = useBoard((state) => state.units);
  if (!(speed.ratedFlow > 0)) return null;
  return (
    <span className="of-rated">
      {says.of} <span className="wide">{says.rated} </span>
      <Explained refTo={{ figure: 'rated flow', speed: index }}>
        {formatFlow(speed.ratedFlow, units)}
      </Explained>{' '}
      (
      <Explained refTo={{ figure: 'share of rated', speed: index }}>
        {percent(flow / speed.ratedFlow)}
      </Explained>
      )
    </span>
  );
}

function Results({ speed, solved, index }: { speed: SpeedResult; solved: Solved; index: number }) {
  const units = useBoard((state) => state.units);
  const fastest = solved.fastest;
  const place = useBoard((state) => (fastest ? segmentName(state.solution.route, fastest.segment) : ''));
  const assumed = useBoard((state) => isAssumed(state.live, speed));
  const ref = (figure: FigureRef['figure'], at?: string): FigureRef => ({
    figure,
    speed: index,
    ...(at === undefined ? {} : { at }),
  });
  return (
    <>
      <div className="delivered">
        <Explained refTo={ref('flow')} className="number">
          {assumed && <span className="about">≈ </span>}
          {formatFlow(solved.flow, units)}
        </Explained>
        <span className="fact">
          <small>
            <Term of="totalPressure">{says.totalPressure}</Term>{' '}
          </small>
          <Explained refTo={ref('total pressure')}>{formatPressure(solved.totalPressure, units)}</Explained>
        </span>
      </div>
      <AirBar speed={speed} flow={solved.flow} />
      <div className="speed-facts">
        {fastest && (
          <span className="fastest">
            {says.fastest}{' '}
            <Explained refTo={ref('velocity', fastest.segment)}>
              {formatVelocity(fastest.velocity, units)}
            </Explained>
            , {place}
          </span>
        )}
        <span className="sound">
          {says.cook}{' '}
          <Explained refTo={ref('sound at the cook')}>
            {decibels(solved.sound.cook.level, solved.sound.uncertainty)}
          </Explained>
          , <Term of="sone">{sonesText(solved.sound.cook.sones)}</Term>
        </span>
        {solved.house && (
          <span className="house" data-beyond={beyondLimit(solved.house) || undefined}>
            <Term of="housePressure">{says.house}</Term>{' '}
            <Explained refTo={ref('house pressure')}>{housePascals(solved.house.pressure)}</Explained>
          </span>
        )}
      </div>
    </>
  );
}

/** True where the fan's curve was made up from less than a curve. */
function isAssumed(job: Job, { hood, speed }: SpeedResult): boolean {
  const found = job.hoods.find((each) => each.id === hood);
  const known = found && speedCurve(found, speed);
  return known?.known === true && known.assumptions.length > 0;
}

/** Delivered within rated, on one scale for all speeds of the hood, with a mark at what the cooktop needs. */
function AirBar({ speed, flow }: { speed: SpeedResult; flow: number }) {
  const needed = useBoard((state) => requiredAirflow(state.live.kitchen).governing.flow);
  const full = useBoard((state) =>
    Math.max(
      Number.MIN_VALUE,
      requiredAirflow(state.live.kitchen).governing.flow,
      ...state.solution.speeds.filter((each) => each.hood === speed.hood).map((each) => each.ratedFlow),
    ),
  );
  const along = (of: number) => `${Math.min(100, (100 * of) / full)}%`;
  return (
    <span className="air-bar" aria-hidden="true">
      <span className="rated" style={{ width: along(speed.ratedFlow) }} />
      <span className="flow" style={{ width: along(flow) }} />
      <span className="needed" style={{ left: along(needed) }} />
    </span>
  );
}
