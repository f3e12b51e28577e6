import { sectionWords } from '../../graph/sections.ts';
import type { FittingResult } from '../../graph/solution.ts';
import { formatNumber, formatPressure, formatRun, formatVelocity } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useBoard } from '../context.ts';
import { Figure } from '../controls.tsx';
import { Figures } from '../explain/Figures.tsx';
import { capitalized, percent } from '../wording.ts';
import { Source } from './Source.tsx';

const says = words.panels.fitting;

/** What one fitting costs at the speed being looked at, and where its coefficient comes from. */
export function FittingFigures({ fitting }: { fitting: FittingResult }) {
  const units = useBoard((state) => state.units);
  const speed = useBoard((state) => state.speed);
  const at = { speed, at: fitting.id };
  return (
    <>
      <p className="fitting-label">{capitalized(fitting.label)}</p>
      <Figures>
        <Figure name={says.loss} term="pressureLoss" refTo={{ figure: 'fitting loss', ...at }}>
          {formatPressure(fitting.loss, units)}
        </Figure>
        <Figure name={says.share} refTo={{ figure: 'share of pressure', ...at }}>
          {percent(fitting.share)}
        </Figure>
        <Figure
          name={says.equivalentLength}
          term="equivalentLength"
          refTo={{ figure: 'equivalent length', ...at }}
        >
          {formatRun(fitting.equivalentLength, units)}
        </Figure>
        <Figure
          name={says.coefficient}
          term="lossCoefficient"
          note={says.on(sectionWords(fitting.section, units))}
          refTo={{ figure: 'coefficient', ...at }}
        >
          {formatNumber(fitting.c, 2)}
        </Figure>
        <Figure name={says.velocity}>{formatVelocity(fitting.velocity, units)}</Figure>
      </Figures>
      {fitting.buildUp && (
        <table className="build-up">
          <caption>{says.builtUp}</caption>
          <tbody>
            {fitting.buildUp.map((step) => (
              <tr key={step.label}>
                <th scope="row">{step.label}</th>
                <td>{says.c(formatNumber(step.c, 2))}</td>
                <td>{formatPressure(step.loss, units)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <Source of={fitting.provenance} title={says.source} />
    </>
  );
}
