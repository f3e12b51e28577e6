import { type BudgetCause, budgetCauses, pressureBudget } from '../../graph/budget.ts';
import { sentence } from '../../graph/places.ts';
import type { SpeedResult } from '../../graph/solution.ts';
import { words } from '../../words/index.ts';
import { speedWords } from './formula-tables.ts';
import type { Subject } from './subject.ts';
import { figures, tableOf } from './tables.ts';
import type { SheetBlock } from './types.ts';

const say = words.jobSheet.charts;
const causes = words.causes.pressure;

/** Each hood's fan against its run, the pressure along the way and what uses it up, with the figures behind them. */
export function chartBlocks(subject: Subject): SheetBlock[] {
  const { designs } = subject;
  if (designs.length === 0) return [{ kind: 'text', text: say.none }];
  return [
    ...designs.flatMap(({ index, speed }): SheetBlock[] => {
      const at = speedWords(subject, index);
      return [
        {
          kind: 'chart',
          chart: 'fan',
          speed: index,
          caption: say.fan(speed.hoodName),
          description: say.fanDescription,
        },
        {
          kind: 'chart',
          chart: 'profile',
          speed: index,
          caption: say.profile(at),
          description: say.profileDescription,
        },
        {
          kind: 'chart',
          chart: 'budget',
          speed: index,
          caption: say.budget(at),
          description: say.budgetDescription,
        },
      ];
    }),
    budgetTable(subject),
  ];
}

type BudgetRow = BudgetCause | 'sum';

function budgetTable(subject: Subject): SheetBlock {
  const speeds = subject.solution.speeds.flatMap((speed: SpeedResult, index) =>
    speed.outcome.solved
      ? [{ index, total: speed.outcome.totalPressure, budget: pressureBudget(speed.outcome) }]
      : [],
  );
  const rows: BudgetRow[] = budgetCauses.filter((cause) =>
    speeds.some(({ budget }) => budget.some((part) => part.cause === cause)),
  );
  return tableOf<BudgetRow>(
    'budget',
    [...rows, 'sum'],
    [
      {
        id: 'cause',
        head: say.cause,
        weight: 16,
        cell: (row) => (row === 'sum' ? say.sum : sentence(causes[row])),
      },
      ...speeds.map(({ index, total, budget }) =>
        figures<BudgetRow>(`speed ${index}`, speedWords(subject, index), 'pressure', subject.units, (row) =>
          row === 'sum' ? total : budget.find(({ cause }) => cause === row)?.loss,
        ),
      ),
    ],
    { caption: say.table, rowId: (row) => row, total: (row) => row === 'sum' },
  );
}
