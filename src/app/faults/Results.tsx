import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { Diagnosis, Suspect, Verdict } from '../../advice/faults/diagnose.ts';
import { causeRow, type Fault, type Measurement } from '../../advice/faults/types.ts';
import { asFound, probeWords, siteWords, sizeWords } from '../../advice/faults/words.ts';
import { formatFlow, formatNumber, formatPressure } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useApp, useBoard } from '../context.ts';
import { QuantityField } from '../controls.tsx';
import { capitalized } from '../wording.ts';
import { measuredText, readMeasured } from './reading.ts';
import type { Done } from './use-diagnosis.ts';

const says = words.faults.results;

const verdicts: Record<Verdict, string> = {
  'as drawn': says.verdicts.asDrawn,
  'told apart': says.verdicts.toldApart,
  'cannot tell': says.verdicts.cannotTell,
  'nothing fits': says.verdicts.nothingFits,
};

/** How many causes are shown at most before the rest is asked for, and what they weigh at least. */
const SHOWN = 3;
const UNLIKELY = 0.01;

const share = (weight: number) => (weight < UNLIKELY ? says.underOne : `${formatNumber(100 * weight, 0)} %`);

export function Results({ run, onMeasured }: { run: Done; onMeasured: (one: Measurement) => void }) {
  const { diagnosis } = run;
  const [all, setAll] = useState(false);
  const shown = diagnosis.suspects.filter(
    ({ weight }, i) => all || i === 0 || (i < SHOWN && weight >= UNLIKELY),
  );
  return (
    <section className="fault-results" aria-label={says.label}>
      <h3>{says.heading}</h3>
      <Unexplained run={run} />
      <Next run={run} onMeasured={onMeasured} />
      <ol className="suspects" aria-label={says.byRank}>
        {shown.map((suspect) => (
          <li key={suspect.fault?.cause ?? 'nothing'}>
            <SuspectCard suspect={suspect} run={run} />
          </li>
        ))}
      </ol>
      {diagnosis.suspects.length > shown.length && (
        <Button className="button" onPress={() => setAll(true)}>
          {says.showAll(diagnosis.suspects.length)}
        </Button>
      )}
      <p className="hint">{says.ranking}</p>
    </section>
  );
}

/** What came of it in one line, which stays in sight while the rest is read. */
export function VerdictLine({ run: { diagnosis } }: { run: Done }) {
  const [first] = diagnosis.suspects;
  return (
    <p className="fault-verdict">
      <strong>{verdicts[diagnosis.verdict]}</strong>
      {first && <span>{says.first(nameOf(first.fault), share(first.weight))}</span>}
    </p>
  );
}

/** The loss that the drawing does not hold, speed by speed. */
function Unexplained({ run: { diagnosis, job } }: { run: Done }) {
  const speeds = useBoard((state) => state.solution.speeds);
  if (diagnosis.unexplained.length === 0) return null;
  const sides = sidesWords(diagnosis, speeds, job.units);
  const { units } = job;
  return (
    <>
      <table className="fault-table">
        <caption>{says.unexplained}</caption>
        <thead>
          <tr>
            <th scope="col">{says.speed}</th>
            <th scope="col">{says.measured}</th>
            <th scope="col">{says.drawn}</th>
            <th scope="col">{says.loss}</th>
            <th scope="col">{says.c}</th>
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
      {sides && <p className="hint">{sides}</p>}
    </>
  );
}

/** Which side of the collar the loss lies on, at the last speed whose pressure was measured there. */
function sidesWords(
  { unexplained }: Diagnosis,
  speeds: readonly { readonly name: string }[],
  units: Done['job']['units'],
): string | null {
  const last = unexplained.findLast(({ sides }) => sides !== null);
  if (!last?.sides) return null;
  const { speed, loss, sides } = last;
  const part = (value: number) =>
    Math.abs(value) < NEGLIGIBLE * Math.abs(loss) ? says.nextToNothing : formatPressure(value, units);
  return says.sides(speeds[speed]?.name ?? '', part(sides.fan), part(sides.duct));
}
/** A part of the loss that is within what is measured of it. */
const NEGLIGIBLE = 0.05;

/** The measurement that would decide, with a field for it. */
function Next({ run, onMeasured }: { run: Done; onMeasured: (one: Measurement) => void }) {
  const speeds = useBoard((state) => state.solution.speeds);
  const { job, schemeId, diagnosis } = run;
  const { next } = diagnosis;
  if (!next) return <p className="next">{says.noNext}</p>;
  const { units } = job;
  const { probe, between } = next;
  const words = probeWords(job, schemeId, probe, speeds[probe.speed]?.name ?? '');
  const value = (si: number) => measuredText(probe.kind, si, units);
  return (
    <div className="next">
      <strong>{says.next(words)}</strong>
      <table className="fault-table">
        <caption>{says.wouldMeasure}</caption>
        <tbody>
          {(
            [
              [between[0], next.first],
              [between[1], next.second],
            ] as const
          ).map(([fault, reading]) => (
            <tr key={nameOf(fault)}>
              <th scope="row">{nameOf(fault)}</th>
              <td>{value(reading)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <QuantityField
        label={says.measures}
        value=""
        parse={(text) => readMeasured(probe.kind, text, units)}
        onCommit={(measured) => onMeasured({ ...probe, value: measured })}
      />
    </div>
  );
}

const nameOf = (fault: Fault | null) => (fault ? causeRow(fault.cause).name : says.nothingWrong);

function SuspectCard({ suspect, run }: { suspect: Suspect; run: Done }) {
  const { board, sheets, say } = useApp();
  const { fault, weight, misfit, air } = suspect;
  const { job, schemeId, measured } = run;
  const off = Math.sqrt(misfit / measured.length);
  const fit = says.misses(formatNumber(off, 1));
  if (!fault)
    return (
      <div className="suspect">
        <h4>
          {says.nothingWrong} <small>{share(weight)}</small>
        </h4>
        <p>{says.asDrawn(fit)}</p>
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
        {row.name} <small>{share(weight)}</small>
      </h4>
      <p>
        {capitalized(siteWords(job, schemeId, fault))}: {sizeWords(job, schemeId, fault)}. {fit}
      </p>
      <p>
        <strong>{says.look}</strong> {row.look}
      </p>
      <p>
        <strong>{says.putRight}</strong> {row.fix}
        {top && top.now !== null && top.after !== null && (
          <> {says.air(top.name, formatFlow(top.now, job.units), formatFlow(top.after, job.units))}</>
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
          {says.showPlace}
        </Button>
        <Button
          className="button"
          onPress={() => {
            let made = schemeId;
            board.dispatch(words.edits.scheme.asFound, (draft) => {
              made = asFound(draft, schemeId, fault);
            });
            board.set({ schemeId: made });
            say(says.madeAsFound);
          }}
        >
          {says.makeAsFound}
        </Button>
      </div>
    </div>
  );
}
