import { useMemo, useState } from 'react';
import { Button, Checkbox, CheckboxGroup, Heading } from 'react-aria-components';
import { compareSchemes } from '../../advice/compare/compare.ts';
import type { SchemeGoal } from '../../advice/compare/standing.ts';
import { useAdvice, useApp, useBoard, useUi } from '../context.ts';
import { FullView } from '../FullView.tsx';
import { Icon } from '../icons.tsx';
import { GoalChooser } from '../proposals/GoalChooser.tsx';
import { CompareSheet } from './CompareSheet.tsx';
import './compare.css';
import './compare-table.css';
import './compare-paper.css';
import { words } from '../../words/index.ts';

const says = words.compare.view;

/** Schemes side by side over the whole window; closing it leads back to the desk as it was. */
export default function CompareView() {
  const { ui } = useApp();
  const open = useUi((state) => state.comparing);
  const close = () => ui.setState({ comparing: false });
  return (
    <FullView name="compare" label={says.heading} isOpen={open} onClose={close}>
      <Page close={close} />
    </FullView>
  );
}

/** Columns that a page has room for. */
const widest = 4;

function Page({ close }: { close: () => void }) {
  const job = useBoard((state) => state.job);
  const speed = useBoard((state) => state.speed);
  const { goal: wanted } = useAdvice();
  const goal: SchemeGoal = wanted === 'opening' ? 'air' : wanted;
  const [chosen, setChosen] = useState<readonly string[]>(() =>
    job.schemes.slice(0, widest).map(({ id }) => id),
  );
  const ids = job.schemes.map(({ id }) => id).filter((id) => chosen.includes(id));
  const columns = ids.join();
  const comparison = useMemo(() => {
    const asked = columns === '' ? [] : columns.split(',');
    return asked.length < 2 ? null : compareSchemes(job, asked, { speed, goal });
  }, [job, columns, speed, goal]);
  return (
    <>
      <header className="compare-bar">
        <Heading slot="title">{says.heading}</Heading>
        <GoalChooser />
        {job.schemes.length > 2 && (
          <CheckboxGroup
            className="compare-choice"
            aria-label={says.schemes}
            value={ids}
            onChange={(next) => next.length >= 2 && next.length <= widest && setChosen(next)}
          >
            {job.schemes.map(({ id, name }) => (
              <Checkbox key={id} value={id} className="check">
                <span className="check-box" aria-hidden="true">
                  <Icon name="tick" size={12} />
                </span>
                {name}
              </Checkbox>
            ))}
          </CheckboxGroup>
        )}
        <span className="compare-buttons">
          <Button className="button" onPress={() => window.print()}>
            {says.print}
          </Button>
          <Button className="button primary" autoFocus onPress={close}>
            {says.back}
          </Button>
        </span>
      </header>
      {comparison ? (
        <CompareSheet comparison={comparison} goal={goal} />
      ) : (
        <p className="compare-empty">{says.chooseTwo}</p>
      )}
    </>
  );
}
