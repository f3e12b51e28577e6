import { Button, Dialog, DialogTrigger, Heading, Popover } from 'react-aria-components';
import type { UnitSystem } from '../graph/document.ts';
import type { SpeedResult } from '../graph/solution.ts';
import { formatFlow, formatPressure, formatVelocity } from '../units/index.ts';
import { useApp, useBoard } from './context.ts';
import { segmentName } from './places.ts';
import { percent } from './wording.ts';

/** What gets out at every speed of every hood: the numbers that the drawing is for. */
export function ResultsStrip() {
  const speeds = useBoard((state) => state.solution.speeds);
  const hoods = new Set(speeds.map((speed) => speed.hood)).size;
  const reason = commonReason(speeds);
  return (
    <section className="strip" aria-label="Results at each fan speed">
      {reason === null ? (
        <div className="speed-cards">
          {speeds.map((speed, index) => (
            <SpeedCard key={`${speed.hood}/${speed.speed}`} speed={speed} index={index} named={hoods > 1} />
          ))}
        </div>
      ) : (
        <div className="strip-empty">
          <p>{reason}</p>
          <p className="remedy">
            Run the duct from a hood to a cap outdoors: pick the hood, duct and cap tools on the left in turn.
          </p>
        </div>
      )}
      <Estimate />
    </section>
  );
}

/** Why no speed has a number, where the reason is the same for all; `null` where some have one. */
function commonReason(speeds: readonly SpeedResult[]): string | null {
  const [first] = speeds;
  if (!first) return 'There is no fan yet, so no air.';
  if (first.outcome.solved) return null;
  const { reason } = first.outcome;
  return speeds.every(({ outcome }) => !outcome.solved && outcome.reason === reason) ? reason : null;
}

function SpeedCard({ speed, index, named }: { speed: SpeedResult; index: number; named: boolean }) {
  const { board } = useApp();
  const units = useBoard((state) => state.units);
  const chosen = useBoard((state) => state.speed === index);
  return (
    <Button
      className="speed-card"
      aria-pressed={chosen}
      data-speed={speed.name}
      onPress={() => board.set({ speed: index })}
    >
      <Outcome speed={speed} units={units} name={named ? `${speed.hoodName}, ${speed.name}` : speed.name} />
    </Button>
  );
}

interface OutcomeProps {
  readonly speed: SpeedResult;
  readonly name: string;
  readonly units: UnitSystem;
}

function Outcome({ speed, name, units }: OutcomeProps) {
  const place = useBoard((state) =>
    speed.outcome.solved && speed.outcome.fastest
      ? segmentName(state.solution.route, speed.outcome.fastest.segment)
      : null,
  );
  const { outcome } = speed;
  if (!outcome.solved)
    return (
      <>
        <span className="speed-head">
          <strong>{name}</strong>
        </span>
        <span className="unsolved">{outcome.reason}</span>
      </>
    );
  const share = speed.ratedFlow > 0 ? outcome.flow / speed.ratedFlow : 0;
  return (
    <>
      <span className="speed-head">
        <strong>{name}</strong>
        <span className="of-rated">
          of <span className="wide">rated </span>
          {formatFlow(speed.ratedFlow, units)} ({percent(share)})
        </span>
      </span>
      <span className="delivered">
        <span className="number" data-figure="flow">
          {formatFlow(outcome.flow, units)}
        </span>
        <span className="fact" data-figure="pressure">
          <small>total pressure </small>
          {formatPressure(outcome.totalPressure, units)}
        </span>
      </span>
      <span className="bar" aria-hidden="true">
        <span style={{ width: `${Math.min(100, 100 * share)}%` }} />
      </span>
      {outcome.fastest && (
        <span className="fastest" data-figure="fastest">
          {'fastest '}
          <strong>{formatVelocity(outcome.fastest.velocity, units)}</strong>, {place}
        </span>
      )}
    </>
  );
}

function Estimate() {
  return (
    <div className="estimate">
      <p>Planning estimate. Local code, the hood's instructions and a licensed installer decide.</p>
      <DialogTrigger>
        <Button className="text-button">Cautions</Button>
        <Popover className="popover cautions" placement="top end">
          <Dialog aria-label="Cautions">
            <Heading slot="title">Before anything is built</Heading>
            <ul>
              <li>
                <strong>Carbon monoxide.</strong> A hood pulls air out of the house. Where a water heater,
                boiler, furnace, stove or fireplace draws its air from the same house, it can pull flue gas
                back in. Have the installer test for spillage with every exhaust fan running, and plan the
                make-up air.
              </li>
              <li>
                <strong>Grease burns.</strong> Use smooth metal duct that can be cleaned, with no screw points
                in the air stream and the clearances that the code and the hood's instructions ask for. Never
                plastic or foil flexible duct where they forbid it.
              </li>
              <li>
                <strong>Outdoors means outdoors.</strong> Never end a kitchen exhaust in an attic, a crawl
                space or a wall.
              </li>
              <li>
                <strong>Homes only.</strong> Commercial cooking has its own codes, hoods and fire suppression,
                and is outside what is computed here.
              </li>
            </ul>
          </Dialog>
        </Popover>
      </DialogTrigger>
    </div>
  );
}
