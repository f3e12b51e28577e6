import { Button } from 'react-aria-components';
import { schemeOf } from '../../graph/infer.ts';
import { words } from '../../words/index.ts';
import { commandById } from '../commands.ts';
import { useApp, useBoard } from '../context.ts';

const says = words.charts.empty;

/** Shapes that the charts will have, 120 by 56, drawn of nothing that was solved. */
const sketches = [
  { id: 'fan', paths: ['M4 8C46 10 84 22 116 52', 'M4 52C50 50 88 34 108 8'], dot: [79.5, 29.5] },
  { id: 'profile', paths: ['M4 8H34L40 20H70L76 38H110L116 50'], dot: null },
  { id: 'budget', paths: ['M4 12H100', 'M4 28H66', 'M4 44H30'], dot: null },
] as const;

interface ChartsEmptyProps {
  /** Why nothing is solved, where there is a run. */
  readonly reason: string | null;
  /** The fan's own chart stands beside it. */
  readonly fan: boolean;
}

/** What the charts will tell, and what has to be drawn first. */
export function ChartsEmpty({ reason, fan }: ChartsEmptyProps) {
  const app = useApp();
  const placed = useBoard(({ job, schemeId }) =>
    schemeOf(job, schemeId).nodes.some(({ role }) => role === 'hood'),
  );
  const next = commandById(placed ? 'tool.draw' : 'tool.hood');
  const title = useBoard(next.title);
  return (
    <div className="charts-empty">
      <div className="charts-empty-lead">
        <p>{placed && reason ? reason : says.lead}</p>
        <Button className="button primary" onPress={() => next.run(app)}>
          {title}
        </Button>
        <ol>
          {says.steps.map((step) => (
            <li key={step}>{step}</li>
          ))}
        </ol>
      </div>
      <ul>
        {sketches
          .filter(({ id }) => id !== 'fan' || !fan)
          .map(({ id, paths, dot }) => (
            <li key={id}>
              <svg viewBox="0 0 120 60" aria-hidden="true" className={id}>
                {paths.map((d) => (
                  <path key={d} d={d} />
                ))}
                {dot && <circle cx={dot[0]} cy={dot[1]} r="3.5" />}
              </svg>
              <span>
                <strong>{words.charts.dock[id]}</strong> {says.tells[id]}
              </span>
            </li>
          ))}
      </ul>
    </div>
  );
}
