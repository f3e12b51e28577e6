import { sectionWords } from '../../graph/sections.ts';
import type { FittingResult } from '../../graph/solution.ts';
import { formatPressure, formatRun, formatVelocity } from '../../units/index.ts';
import { useBoard } from '../context.ts';
import { Figure } from '../controls.tsx';
import { percent } from '../wording.ts';
import { Source } from './Source.tsx';

/** What one fitting costs at the speed being looked at, and where its coefficient comes from. */
export function FittingFigures({ fitting }: { fitting: FittingResult }) {
  const units = useBoard((state) => state.units);
  return (
    <>
      <p className="fitting-label">{fitting.label}</p>
      <dl className="figures">
        <Figure name="Loss">{formatPressure(fitting.loss, units)}</Figure>
        <Figure name="Share of the pressure">{percent(fitting.share)}</Figure>
        <Figure name="Equivalent length">{formatRun(fitting.equivalentLength, units)}</Figure>
        <Figure name="Loss coefficient C" note={`on ${sectionWords(fitting.section, units)}`}>
          {fitting.c.toFixed(2)}
        </Figure>
        <Figure name="Velocity">{formatVelocity(fitting.velocity, units)}</Figure>
      </dl>
      {fitting.buildUp && (
        <table className="build-up">
          <caption>Built up from</caption>
          <tbody>
            {fitting.buildUp.map((step) => (
              <tr key={step.label}>
                <th scope="row">{step.label}</th>
                <td>C {step.c.toFixed(2)}</td>
                <td>{formatPressure(step.loss, units)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <Source of={fitting.provenance} title="Where the coefficient comes from" />
    </>
  );
}
