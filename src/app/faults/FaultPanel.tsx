import './faults.css';
import { useMemo } from 'react';
import { Button, Heading } from 'react-aria-components';
import { type KeptMeasurement, kept, stillMeasured } from '../../advice/faults/kept.ts';
import { sameProbe } from '../../advice/faults/next.ts';
import type { Measurement } from '../../advice/faults/types.ts';
import type { Job } from '../../graph/document.ts';
import { schemeOf } from '../../graph/infer.ts';
import { words } from '../../words/index.ts';
import { useApp, useBoard, useUi } from '../context.ts';
import { IconButton } from '../controls.tsx';
import { useFocusBack } from '../focus-back.ts';
import { MeasuredFields } from './MeasuredFields.tsx';
import { Results, VerdictLine } from './Results.tsx';
import { type Done, useDiagnosis } from './use-diagnosis.ts';

const says = words.faults.panel;

/** What is wrong with a hood that is weak or loud today, by what was measured at it; in the place of the side panel. */
export default function FaultPanel() {
  const { ui } = useApp();
  const box = useFocusBack();
  const solved = useBoard((state) => state.solution.speeds.some(({ outcome }) => outcome.solved));
  return (
    <aside ref={box} tabIndex={-1} className="side-panel fault-panel" aria-label={says.heading}>
      <header className="panel-head">
        <Heading level={2}>{says.heading}</Heading>
        <IconButton
          icon="close"
          label={words.shell.dialog.close}
          onPress={() => ui.setState({ faults: false })}
        />
      </header>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls is reached by keys */}
      <section className="tab-panel" aria-label={says.body} tabIndex={0}>
        {solved ? <Guided /> : <Unsolved />}
      </section>
    </aside>
  );
}

function Unsolved() {
  return (
    <div className="empty-state">
      <h3>{says.empty.title}</h3>
      <p>{says.empty.text}</p>
      <ol>
        <li>{says.empty.draw}</li>
        <li>{says.empty.measure}</li>
        <li>{says.empty.enter}</li>
      </ol>
    </div>
  );
}

function Guided() {
  const { ui } = useApp();
  const schemeId = useBoard((state) => state.schemeId);
  const job = useBoard((state) => state.job);
  const all = useUi((state) => state.measured[schemeId] ?? none);
  const speeds = useBoard((state) => state.solution.speeds);
  const nodes = useBoard((state) => state.solution.route.nodes);
  const measured = useMemo(
    () => stillMeasured(all, speeds).filter(({ node }) => node === undefined || nodes.has(node)),
    [all, speeds, nodes],
  );
  const { run, start } = useDiagnosis();
  const keep = (list: readonly Measurement[]) => {
    const made = kept(list, speeds);
    ui.setState({ measured: { ...ui.getState().measured, [schemeId]: made } });
    return list;
  };
  const without = (one: Measurement) => measured.filter((other) => !sameProbe(other, one));
  const take = (one: Measurement) => keep([...without(one), one]);
  const done = run.state === 'done' && run.schemeId === schemeId ? run : null;
  return (
    <>
      {done && <VerdictLine run={done} />}
      <p className="caution">{says.safety}</p>
      <MeasuredFields measured={measured} take={take} drop={(one) => keep(without(one))} />
      <div className="fault-act">
        <Button
          className="button primary"
          isDisabled={measured.length === 0 || run.state === 'running'}
          onPress={() => start(measured)}
        >
          {run.state === 'running' ? says.comparing : says.find}
        </Button>
        {done && changed(done, job, measured) && <span className="hint">{changed(done, job, measured)}</span>}
      </div>
      {run.state === 'failed' && <p className="field-error">{run.message}</p>}
      {done && <Results run={done} onMeasured={(one) => start(take(one))} />}
    </>
  );
}

const none: readonly KeptMeasurement[] = [];

/** What is no longer as it was when the causes were ranked. */
function changed(run: Done, job: Job, measured: readonly Measurement[]): string | null {
  if (JSON.stringify(run.measured) !== JSON.stringify(measured)) return says.measurementsChanged;
  return schemeOf(run.job, run.schemeId) === schemeOf(job, run.schemeId) ? null : says.drawingChanged;
}
