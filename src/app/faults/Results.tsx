import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { Diagnosis, Suspect, Verdict } from '../../advice/faults/diagnose.ts';
import { causeRow, type Fault, type Measurement } from '../../advice/faults/types.ts';
import { asFound, probeWords, siteWords, sizeWords } from '../../advice/faults/words.ts';
import { formatFlow, formatNumber, formatPressure } from '../../units/index.ts';
import { useApp, useBoard } from '../context.ts';
import { QuantityField } from '../controls.tsx';
import { capitalized } from '../wording.ts';
import { measuredText, readMeasured } from './reading.ts';
import type { Done } from './use-diagnosis.ts';

const verdicts: Record<Verdict, string> = {
  'as drawn': 'What was measured is what the drawing gives: nothing has to be wrong to explain it.',
  'told apart': 'One cause explains the measurements clearly better than the others that were tried.',
  'cannot tell': 'These measurements cannot tell the first causes apart.',
  'nothing fits':
    'No single cause explains these measurements. Check the readings and the drawing, or look for two causes at once.',
};

/** How many causes are shown before the rest is asked for. */
const SHOWN = 3;

export function Results({ run, onMeasured }: { run: Done; onMeasured: (one: Measurement) => void }) {
  const { diagnosis } = run;
  const [all, setAll] = useState(false);
  const shown = all ? diagnosis.suspects : diagnosis.suspects.slice(0, SHOWN);
  return (
    <section className="fault-results" aria-label="Causes">
      <h3>What the measurements say</h3>
      <p>{verdicts[diagnosis.verdict]}</p>
      <Unexplained run={run} />
      <Next run={run} onMeasured={onMeasured} />
      <ol className="suspects" aria-label="Causes by rank">
        {shown.map((suspect) => (
          <li key={suspect.fault?.cause ?? 'nothing'}>
            <SuspectCard suspect={suspect} run={run} />
          </li>
        ))}
      </ol>
      {diagnosis.suspects.length > shown.length && (
        <Button className="button" onPress={() => setAll(true)}>
          Show all {diagnosis.suspects.length}
        </Button>
      )}
      <p className="hint">
        Ranked by how well each cause, solved for real at its best size, meets every measurement, and by how
        often it is met with (common practice). A rank is not a proof: look before anything is opened.
      </p>
    </section>
  );
}

/** The loss that the drawing does not hold, speed by speed. */
function Unexplained({ run: { diagnosis, job } }: { run: Done }) {
  const speeds = useBoard((state) => state.solution.speeds);
  if (diagnosis.unexplained.length === 0) return null;
  const { units } = job;
  return (
    <>
      <table className="fault-table">
        <caption>Loss that the drawing does not explain</caption>
        <thead>
          <tr>
            <th scope="col">Speed</th>
            <th scope="col">Measured</th>
            <th scope="col">Drawn</th>
            <th scope="col">Loss</th>
            <th scope="col">C</th>
          </tr>
        </thead>
        <tbody>
          {diagnosis.unexplained.map((one) => (
            <tr key={one.speed}>
              <th scope="row">{speeds[one.speed]?.name}</th>
              <td>{formatFlow(one.flow, units)}</td>
              <td>{formatFlow(one.drawn, units)}</td>
              <td>{formatPressure(one.loss, units)}</td>
              <td>{formatNumber(one.c, 1)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {sidesWords(diagnosis, units) && <p className="hint">{sidesWords(diagnosis, units)}</p>}
    </>
  );
}

function sidesWords({ unexplained }: Diagnosis, units: Done['job']['units']): string | null {
  const sides = unexplained.at(-1)?.sides;
  if (!sides) return null;
  const pressure = (value: number) => formatPressure(value, units);
  return `By the gauge at the collar, ${pressure(sides.fan)} of the last is the fan's own or lost before it, and ${pressure(sides.duct)} is lost after it or to the house.`;
}

/** The measurement that would decide, with a field for it. */
function Next({ run, onMeasured }: { run: Done; onMeasured: (one: Measurement) => void }) {
  const speeds = useBoard((state) => state.solution.speeds);
  const { job, schemeId, diagnosis } = run;
  const { next } = diagnosis;
  if (!next)
    return (
      <p className="next">
        No further measurement would tell the first of them apart: looking does. See what to look at below.
      </p>
    );
  const { units } = job;
  const { probe, between } = next;
  const words = probeWords(job, schemeId, probe, speeds[probe.speed]?.name ?? '');
  const value = (si: number) => measuredText(probe.kind, si, units);
  return (
    <div className="next">
      <strong>Measure next: {words}.</strong>
      <p>
        {`${nameOf(between[0])} would make it ${value(next.first)}, ${lower(nameOf(between[1]))} ${value(next.second)}`.replace(
          /\.?$/,
          '.',
        )}
      </p>
      <QuantityField
        label="It measures"
        value=""
        parse={(text) => readMeasured(probe.kind, text, units)}
        onCommit={(measured) => onMeasured({ ...probe, value: measured })}
      />
    </div>
  );
}

const nameOf = (fault: Fault | null) => (fault ? causeRow(fault.cause).name : 'Nothing wrong');
const lower = (words: string) => words.charAt(0).toLowerCase() + words.slice(1);

function SuspectCard({ suspect, run }: { suspect: Suspect; run: Done }) {
  const { board, sheets, say } = useApp();
  const { fault, weight, misfit, air } = suspect;
  const { job, schemeId, measured } = run;
  const off = Math.sqrt(misfit / measured.length);
  const fit = `Misses the measurements by ${formatNumber(off, 1)} times their error.`;
  if (!fault)
    return (
      <div className="suspect">
        <h4>
          Nothing wrong <small>{Math.round(100 * weight)} %</small>
        </h4>
        <p>The run as drawn. {fit}</p>
      </div>
    );
  const row = causeRow(fault.cause);
  const place = {
    nodes: fault.node === undefined ? [] : [fault.node],
    segments: fault.segment === undefined || fault.node !== undefined ? [] : [fault.segment],
  };
  const top = air.at(-1);
  return (
    <div className="suspect">
      <h4>
        {row.name} <small>{Math.round(100 * weight)} %</small>
      </h4>
      <p>
        {capitalized(siteWords(job, schemeId, fault))}: {sizeWords(job, schemeId, fault)}. {fit}
      </p>
      <p>
        <strong>Look.</strong> {row.look}
      </p>
      <p>
        <strong>Put right.</strong> {row.fix}
        {top && top.now !== null && top.after !== null && (
          <>
            {' '}
            At {top.name} the air at the cap would go from {formatFlow(top.now, job.units)} to{' '}
            {formatFlow(top.after, job.units)}.
          </>
        )}
      </p>
      <p className="source">{row.source}</p>
      <div className="fault-act">
        <Button
          className="button"
          onPress={() => {
            board.set({ selection: place, tool: 'select' });
            sheets.reveal(place);
          }}
        >
          Show the place
        </Button>
        <Button
          className="button"
          onPress={() => {
            let made = schemeId;
            board.dispatch('make a scheme as found', (draft) => {
              made = asFound(draft, schemeId, fault);
            });
            board.set({ schemeId: made });
            say('A scheme as found was made.');
          }}
        >
          Make a scheme as found
        </Button>
      </div>
    </div>
  );
}
