import { goals } from '../../advice/goals.ts';
import { words } from '../../words/index.ts';
import { useAdvice, useApp } from '../context.ts';
import { Choice } from '../kitchen/fields.tsx';

const choices = goals.map(({ id, title, what }) => ({ id, name: title, what }));

/** What is wanted most: the order of the proposals, and what combinations are looked for. */
export function GoalChooser() {
  const { advisor } = useApp();
  const { goal } = useAdvice();
  return (
    <Choice label={words.proposals.goal.label} choices={choices} value={goal} onChoose={advisor.setGoal} />
  );
}
