import { Button } from 'react-aria-components';
import type { SpeedResult } from '../graph/solution.ts';
import { words } from '../words/index.ts';
import { commandById } from './commands.ts';
import { useApp, useBoard } from './context.ts';
import { Cautions } from './strip/Cautions.tsx';
import { Needed } from './strip/Needed.tsx';
import { SpeedCard } from './strip/SpeedCard.tsx';

const says = words.shell.results;

/** What gets out at every speed of every hood: the numbers that the drawing is for. */
export function ResultsStrip() {
  const speeds = useBoard((state) => state.solution.speeds);
  const hoods = new Set(speeds.map((speed) => speed.hood)).size;
  const reason = commonReason(speeds);
  return (
    <section className="strip" aria-label={says.label}>
      {reason === null ? (
        <div className="speed-cards">
          {speeds.map((speed, index) => (
            <SpeedCard key={`${speed.hood}/${speed.speed}`} speed={speed} index={index} named={hoods > 1} />
          ))}
        </div>
      ) : (
        <div className="strip-empty">
          <p>{reason}</p>
          <p className="remedy">{says.start}</p>
        </div>
      )}
      <Estimate />
    </section>
  );
}

/** Why no speed has a number, where the reason is the same for all; `null` where some have one. */
function commonReason(speeds: readonly SpeedResult[]): string | null {
  const [first] = speeds;
  if (!first) return says.noFan;
  if (first.outcome.solved) return null;
  const { reason } = first.outcome;
  return speeds.every(({ outcome }) => !outcome.solved && outcome.reason === reason) ? reason : null;
}

function Estimate() {
  const app = useApp();
  return (
    <div className="estimate">
      <Needed />
      <p>{says.estimate}</p>
      <div className="estimate-more">
        <Cautions />
        <Button className="text-button" onPress={() => commandById('view.help').run(app)}>
          {words.help.view.title}
        </Button>
      </div>
    </div>
  );
}
