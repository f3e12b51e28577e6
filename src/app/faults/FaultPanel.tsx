import './faults.css';
import { Button, Heading } from 'react-aria-components';
import { sameProbe } from '../../advice/faults/next.ts';
import type { Measurement } from '../../advice/faults/types.ts';
import { useApp, useBoard, useUi } from '../context.ts';
import { IconButton } from '../controls.tsx';
import { MeasuredFields } from './MeasuredFields.tsx';
import { Results } from './Results.tsx';
import { useDiagnosis } from './use-diagnosis.ts';

/** What is wrong with a hood that is weak or loud today, by what was measured at it; in the place of the side panel. */
export default function FaultPanel() {
  const { ui } = useApp();
  const solved = useBoard((state) => state.solution.speeds.some(({ outcome }) => outcome.solved));
  return (
    <aside className="side-panel fault-panel" aria-label="Find a fault">
      <header className="fault-head">
        <Heading level={2}>Find a fault</Heading>
        <IconButton icon="close" label="Close" onPress={() => ui.setState({ faults: false })} />
      </header>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls is reached by keys */}
      <section className="tab-panel" aria-label="Measurements and causes" tabIndex={0}>
        {solved ? (
          <Guided />
        ) : (
          <p className="caution">
            Draw the route as far as it is known first: a hood, its duct, and where it ends. Then measure, and
            enter it here.
          </p>
        )}
      </section>
    </aside>
  );
}

function Guided() {
  const { ui } = useApp();
  const measured = useUi((state) => state.measured);
  const { run, start } = useDiagnosis();
  const take = (one: Measurement) =>
    ui.setState({ measured: [...measured.filter((other) => !sameProbe(other, one)), one] });
  const drop = (one: Measurement) =>
    ui.setState({ measured: measured.filter((other) => !sameProbe(other, one)) });
  const current = run.state === 'done' && run.measured === measured;
  return (
    <>
      <p className="caution">
        Ladders and roofs kill: measure from the inside where you can, and leave the roof to people who are
        secured on it. Where anything burns fuel in the house, a licensed technician tests for spillage of
        carbon monoxide before and after the hood is changed.
      </p>
      <MeasuredFields measured={measured} take={take} drop={drop} />
      <div className="fault-act">
        <Button
          className="button primary"
          isDisabled={measured.length === 0 || run.state === 'running'}
          onPress={() => start(measured)}
        >
          {run.state === 'running' ? 'Comparing…' : 'Find the cause'}
        </Button>
        {run.state === 'done' && !current && <span className="hint">Measurements have changed since.</span>}
      </div>
      {run.state === 'failed' && <p className="field-error">{run.message}</p>}
      {run.state === 'done' && (
        <Results
          run={run}
          onMeasured={(one) => {
            take(one);
            start(ui.getState().measured);
          }}
        />
      )}
    </>
  );
}
