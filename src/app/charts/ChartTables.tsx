import type { ReactNode } from 'react';
import type { Selection } from '../../canvas/board.ts';
import { pressureBudget } from '../../graph/budget.ts';
import type { Hood } from '../../graph/document.ts';
import type { Solved } from '../../graph/solution.ts';
import { formatFlow, formatPressure, formatRun, quantity, unitOf } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useBoard } from '../context.ts';
import { placeName, profileSteps } from '../panel/profile-steps.ts';
import { usePointing } from '../pointing.ts';
import { capitalized, percent } from '../wording.ts';
import { fanRows } from './fan-rows.ts';

const says = words.charts.tables;

/** Where each speed works, and the curves in figures. */
export function FanTable({ hood }: { hood: Hood }) {
  const job = useBoard((state) => state.live);
  const solution = useBoard((state) => state.solution);
  const chosen = useBoard((state) => state.speed);
  const units = useBoard((state) => state.units);
  const { working, curves } = fanRows(job, solution, hood, chosen, units);
  return (
    <>
      <ChartTable
        caption={says.working}
        heads={[says.speed, says.air, says.totalPressure, says.staticPressure]}
      >
        {working.map(({ name, outcome }) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            {outcome.solved ? (
              <>
                <td>{formatFlow(outcome.flow, units)}</td>
                <td>{formatPressure(outcome.totalPressure, units)}</td>
                <td>{formatPressure(outcome.staticPressure, units)}</td>
              </>
            ) : (
              <td colSpan={3}>{outcome.reason}</td>
            )}
          </tr>
        ))}
      </ChartTable>
      <ChartTable
        caption={says.pressureByAir(unitOf('pressure', units))}
        heads={[says.air, ...hood.speeds.map(({ name }) => capitalized(name)), says.runAsksFor]}
      >
        {curves.map(({ flow, fan, system }) => (
          <tr key={flow}>
            <th scope="row">{formatFlow(flow, units)}</th>
            {fan.map(({ name, pressure }) => (
              <td key={name}>{pressure === null ? '–' : quantity('pressure', pressure, units).figure}</td>
            ))}
            <td>{system === null ? '–' : quantity('pressure', system, units).figure}</td>
          </tr>
        ))}
      </ChartTable>
    </>
  );
}

/** Pressure at the start and the end of each leg and fitting; rows and sheets point at one another. */
export function ProfileTable({ solved }: { solved: Solved }) {
  const units = useBoard((state) => state.units);
  const route = useBoard((state) => state.solution.route);
  return (
    <ChartTable
      caption={says.alongRun(unitOf('pressure', units))}
      heads={[says.place, says.fromHood, says.takes, says.totalAfter, says.staticAfter]}
    >
      {profileSteps(solved, route).map(({ to, place, loss }) => (
        <PlaceRow
          key={`${place} ${to.distance} ${to.total}`}
          name={placeName(route, place)}
          place={
            route.segments.has(place) ? { nodes: [], segments: [place] } : { nodes: [place], segments: [] }
          }
        >
          <td>{formatRun(to.distance, units)}</td>
          <td>{quantity('pressure', loss, units).figure}</td>
          <td>{quantity('pressure', to.total, units).figure}</td>
          <td>{quantity('pressure', to.static, units).figure}</td>
        </PlaceRow>
      ))}
    </ChartTable>
  );
}

/** The pressure by cause, with its sum. */
export function BudgetTable({ solved }: { solved: Solved }) {
  const units = useBoard((state) => state.units);
  return (
    <ChartTable caption={words.charts.dock.budget} heads={[says.part, says.takes, says.share]}>
      {pressureBudget(solved).map(({ cause, loss, share, nodes, segments }) => (
        <PlaceRow key={cause} name={capitalized(words.causes.pressure[cause])} place={{ nodes, segments }}>
          <td>{formatPressure(loss, units)}</td>
          <td>{percent(share)}</td>
        </PlaceRow>
      ))}
      <tr className="sum">
        <th scope="row">{says.fanGives}</th>
        <td>{formatPressure(solved.totalPressure, units)}</td>
        <td>{percent(1)}</td>
      </tr>
    </ChartTable>
  );
}

interface ChartTableProps {
  readonly caption: string;
  readonly heads: readonly string[];
  readonly children: ReactNode;
}

function ChartTable({ caption, heads, children }: ChartTableProps) {
  return (
    <table className="chart-table">
      <caption>{caption}</caption>
      <thead>
        <tr>
          {heads.map((head) => (
            <th key={head} scope="col">
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>{children}</tbody>
    </table>
  );
}

/** A row that points at its place on the sheets, by mouse and by key, and stands out when they point at it. */
function PlaceRow({ name, place, children }: { name: string; place: Selection; children: ReactNode }) {
  const { lit, point, leave, choose } = usePointing(place);
  return (
    <tr data-lit={lit || undefined} onPointerEnter={point} onPointerLeave={leave}>
      <th scope="row">
        <button type="button" className="place-button" onFocus={point} onBlur={leave} onClick={choose}>
          {name}
        </button>
      </th>
      {children}
    </tr>
  );
}
