import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import type { SchemeFigures } from '../../advice/compare/figures.ts';
import type { SchemeGoal } from '../../advice/compare/standing.ts';
import { type Catching, winning } from '../../advice/compare/winning.ts';
import { formatMoney } from '../../advice/cost/price.ts';
import { formatFlow } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useApp, useBoard } from '../context.ts';
import { inIdlePieces } from '../idle-work.ts';

const says = words.compare.catching;

interface WhatWouldWinProps {
  readonly loser: SchemeFigures;
  readonly winner: SchemeFigures;
  readonly speed: number;
  readonly speedName: string;
  readonly goal: SchemeGoal;
}

/** What would make a scheme that lost the better one, tried in idle time; made by one press, as one step. */
export function WhatWouldWin({ loser, winner, speed, speedName, goal }: WhatWouldWinProps) {
  const { board } = useApp();
  const units = useBoard((state) => state.units);
  const job = useBoard((state) => state.job);
  const [found, setFound] = useState<{ readonly of: unknown; readonly catching: Catching | null } | null>(
    null,
  );
  const key = JSON.stringify([loser.id, winner.id, speed, goal]);
  const current = found !== null && found.of === job ? found : null;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key stands for the two schemes
  useEffect(
    () =>
      inIdlePieces(
        () => winning(job, loser.id, winner, { speed, goal }),
        (catching) => setFound({ of: job, catching }),
        { rest: 50 },
      ),
    [job, key],
  );
  if (!current) return <p className="muted">{says.trying(loser.name)}</p>;
  const { catching } = current;
  if (!catching)
    return (
      <p>
        <strong>{loser.name}</strong>
        {says.nothing}
      </p>
    );
  const { members, figures, wins } = catching;
  const flow = figures.solved?.flow ?? 0;
  const cost = figures.cost.total - loser.cost.total;
  return (
    <div className="catching">
      <p>
        <strong>{loser.name}</strong>{' '}
        {(wins ? says.wouldWin : says.wouldNotWin)(
          members.map(({ title }) => title).join('; '),
          formatFlow(flow, units),
          speedName,
          formatMoney(cost, true),
        )}
      </p>
      {wins && (
        <Button className="button" onPress={() => board.dispatch(catching.label, catching.recipe)}>
          {says.doIt(loser.name)}
        </Button>
      )}
    </div>
  );
}
