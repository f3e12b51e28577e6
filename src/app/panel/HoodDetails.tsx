import type { Draft } from 'immer';
import type { Hood, UnitSystem } from '../../graph/document.ts';
import { type SpeedCurve, speedCurve } from '../../graph/speeds.ts';
import { formatFlow, formatLength, formatPressure } from '../../units/index.ts';
import { useApp, useBoard } from '../context.ts';
import { Figure } from '../controls.tsx';
import { SectionChooser } from './choosers.tsx';
import { FanChart } from './FanChart.tsx';

/** The hood of a node: its collar, and the curve of every speed as a table that can be checked. */
export function HoodDetails({ id }: { id: string }) {
  const { board } = useApp();
  const units = useBoard((state) => state.units);
  const hood = useBoard((state) => state.live.hoods.find((h) => h.id === id));
  if (!hood) return <p className="caution">The hood of this node is not in the job.</p>;
  const change = (label: string, recipe: (hood: Draft<Hood>) => void) =>
    board.dispatch(label, (job) => {
      const draft = job.hoods.find((h) => h.id === id);
      if (draft) recipe(draft);
    });
  return (
    <>
      <p className="fitting-label">{hood.name}</p>
      <SectionChooser
        label="Collar"
        value={hood.collar}
        onChoose={(collar) =>
          change('change collar', (draft) => {
            draft.collar = collar;
          })
        }
      />
      {hood.width !== undefined && (
        <dl className="figures">
          <Figure name="Width">{formatLength(hood.width, units)}</Figure>
        </dl>
      )}
      <h3>Fan at each speed</h3>
      <FanChart hood={hood} />
      {hood.speeds.map((speed, index) => (
        <SpeedTable
          key={speed.name}
          name={speed.name}
          basis={speed.pressureBasis}
          curve={speedCurve(hood, index)}
          units={units}
        />
      ))}
    </>
  );
}

interface SpeedTableProps {
  readonly name: string;
  readonly basis: 'static' | 'total';
  readonly curve: SpeedCurve;
  readonly units: UnitSystem;
}

function SpeedTable({ name, basis, curve, units }: SpeedTableProps) {
  if (!curve.known) return <p className="caution">{curve.reason}</p>;
  return (
    <table className="curve-table">
      <caption>
        {name}, rated {formatFlow(curve.ratedFlow, units)}
      </caption>
      <thead>
        <tr>
          <th scope="col">Flow</th>
          <th scope="col">{basis === 'static' ? 'Static pressure' : 'Total pressure'}</th>
        </tr>
      </thead>
      <tbody>
        {curve.curve.points.map(([flow, pressure]) => (
          <tr key={`${flow}/${pressure}`}>
            <td>{formatFlow(flow, units)}</td>
            <td>{formatPressure(pressure, units)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
