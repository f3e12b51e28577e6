import './charts.css';
import { useState, useSyncExternalStore } from 'react';
import { Heading, ToggleButton, ToggleButtonGroup } from 'react-aria-components';
import { formatFlow, formatPressure } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useApp, useBoard } from '../context.ts';
import { IconButton } from '../controls.tsx';
import { useFocusBack } from '../focus-back.ts';
import { FanChart } from '../panel/FanChart.tsx';
import { PressureProfile } from '../panel/PressureProfile.tsx';
import { Term } from '../term/Term.tsx';
import { BudgetChart } from './BudgetChart.tsx';
import { ChartsEmpty } from './ChartsEmpty.tsx';
import { BudgetTable, FanTable, ProfileTable } from './ChartTables.tsx';

const says = words.charts.dock;

/** As wide as a third of the window, so that its words keep their size. */
const wide = { width: 440, height: 206 };
const narrow = { width: 312, height: 166 };
const narrowWindow = window.matchMedia('(max-width: 1180px)');

const watchWindow = (changed: () => void) => {
  narrowWindow.addEventListener('change', changed);
  return () => narrowWindow.removeEventListener('change', changed);
};

/** Fan and run, pressure along the run, and what uses it up: under the sheets, so that each points at the other. */
export default function ChartsDock() {
  const { ui } = useApp();
  const box = useFocusBack();
  const speed = useBoard((state) => state.solution.speeds[state.speed]);
  const hood = useBoard((state) =>
    state.live.hoods.find(({ id }) => id === state.solution.speeds[state.speed]?.hood),
  );
  const units = useBoard((state) => state.units);
  const [shown, setShown] = useState<'charts' | 'tables'>('charts');
  const tables = shown === 'tables';
  const size = useSyncExternalStore(watchWindow, () => narrowWindow.matches) ? narrow : wide;
  const outcome = speed?.outcome.solved ? speed.outcome : null;
  return (
    <section ref={box} tabIndex={-1} className="charts-dock" aria-label={says.heading}>
      <header className="table-bar">
        <Heading level={2}>{speed ? says.headingAt(speed.name) : says.heading}</Heading>
        <ToggleButtonGroup
          className="switch"
          aria-label={says.show}
          selectionMode="single"
          disallowEmptySelection
          selectedKeys={[shown]}
          onSelectionChange={(keys) => setShown([...keys][0] === 'tables' ? 'tables' : 'charts')}
        >
          <ToggleButton id="charts">{says.heading}</ToggleButton>
          <ToggleButton id="tables">{says.tables}</ToggleButton>
        </ToggleButtonGroup>
        <IconButton
          icon="close"
          label={says.close}
          placement="left"
          onPress={() => ui.setState({ charts: false })}
        />
      </header>
      <div className="charts-body">
        {hood && (
          <section aria-labelledby="chart-fan" tabIndex={tables ? 0 : -1}>
            <h3 id="chart-fan">
              <Term of="fanCurve">{says.fan}</Term>
              {outcome && <small>{formatFlow(outcome.flow, units)}</small>}
            </h3>
            {tables ? <FanTable hood={hood} /> : <FanChart hood={hood} size={size} />}
          </section>
        )}
        {outcome ? (
          <>
            <section aria-labelledby="chart-profile" tabIndex={tables ? 0 : -1}>
              <h3 id="chart-profile">{says.profile}</h3>
              {tables ? <ProfileTable solved={outcome} /> : <PressureProfile solved={outcome} size={size} />}
            </section>
            <section aria-labelledby="chart-budget" tabIndex={tables ? 0 : -1}>
              <h3 id="chart-budget">
                {says.budget}
                <small>{says.inAll(formatPressure(outcome.totalPressure, units))}</small>
              </h3>
              {tables ? <BudgetTable solved={outcome} /> : <BudgetChart solved={outcome} size={size} />}
            </section>
          </>
        ) : (
          <ChartsEmpty
            reason={speed && !speed.outcome.solved ? speed.outcome.reason : null}
            fan={hood !== undefined}
          />
        )}
      </div>
    </section>
  );
}
