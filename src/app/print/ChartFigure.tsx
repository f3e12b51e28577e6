import type { ChartBlock } from '../../files/job-sheet/types.ts';
import { BudgetChart } from '../charts/BudgetChart.tsx';
import '../charts/charts.css';
import { useBoard } from '../context.ts';
import { FanChart } from '../panel/FanChart.tsx';
import { PressureProfile } from '../panel/PressureProfile.tsx';

const size = { width: 440, height: 160 };

/** A chart of the scheme on the desk, at the speed that the sheet is about. */
export function ChartFigure({ block: { chart, speed, caption } }: { block: ChartBlock }) {
  const result = useBoard((state) => state.solution.speeds[speed]);
  const hood = useBoard((state) => state.job.hoods.find(({ id }) => id === result?.hood));
  if (!hood || !result?.outcome.solved) return null;
  return (
    <div className="paper-chart" data-chart={chart}>
      <h3>{caption}</h3>
      {chart === 'fan' && <FanChart hood={hood} speed={speed} size={size} />}
      {chart === 'profile' && <PressureProfile solved={result.outcome} size={size} />}
      {chart === 'budget' && <BudgetChart solved={result.outcome} size={size} />}
    </div>
  );
}
