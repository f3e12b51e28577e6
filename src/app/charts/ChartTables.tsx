import type { ReactNode } from 'react';
import type { Selection } from '../../canvas/board.ts';
import { pressureBudget } from '../../graph/budget.ts';
import type { Hood } from '../../graph/document.ts';
import type { Solved } from '../../graph/solution.ts';
import { formatFlow, formatPressure, formatRun, unitOf } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useBoard } from '../context.ts';
import { type ProfileStep, placeName, profileSteps } from '../panel/profile-steps.ts';
import { usePointing } from '../pointing.ts';
import { capitalized, percent } from '../wording.ts';
import { alikePressures } from './alike.ts';
import { fanRows } from './fan-rows.ts';

const says = words.charts.tables;

/** Where each speed works, and the curves in figures. */
export function FanTable({ hood }: { hood: Hood }) {
  const job = useBoard((state) => state.live);
  const solution = useBoard((state) => state.solution);
  const chosen = useBoard((state) => state.speed);
  const units = useBoard((state) => state.units);
  const { working, curves } = fanRows(job, solution, hood, chosen, units);
  const columns = hood.speeds.map((_, i) =>
    alikePressures(
      curves.map(({ fan }) => fan[i]?.pressure ?? null),
      units,
    ),
  );
  const asked = alikePressures(
    curves.map(({ system }) => system),
    units,
  );
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
        {curves.map(({ flow, fan }, row) => (
          <tr key={flow}>
            <th scope="row">{formatFlow(flow, units)}</th>
            {fan.map(({ name }, i) => (
              <td key={name}>{columns[i]?.[row]}</td>
            ))}
            <td>{asked[row]}</td>
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
  const steps = profileSteps(solved, route);
  const column = (of: (step: ProfileStep) => number) => alikePressures(steps.map(of), units);
  const takes = column(({ loss }) => loss);
  const total = column(({ to }) => to.total);
  const still = column(({ to }) => to.static);
  return (
    <ChartTable
      caption={says.alongRun(unitOf('pressure', units))}
      heads={[says.place, says.fromHood, says.takes, says.totalAfter, says.staticAfter]}
    >
      {steps.map(({ to, place, along }, i) => (
        <PlaceRow
          key={`${place} ${to.distance} ${to.total}`}
          name={
            along === 0 && route.segments.has(place)
              ? says.inLine(placeName(route, place))
              : placeName(route, place)
          }
          place={
            route.segments.has(place) ? { nodes: [], segments: [place] } : { nodes: [place], segments: [] }
          }
        >
          <td>{formatRun(to.distance, units)}</td>
          <td>{takes[i]}</td>
          <td>{total[i]}</td>
          <td>{still[i]}</td>
        </PlaceRow>
      ))}
    </ChartTable>
  );
}

/** The pressure by cause, with its sum. */
export function BudgetTable({ solved }: { solved: Solved }) {
  const units = useBoard((state) => state.units);
  const parts = pressureBudget(solved);
  const takes = alikePressures([...parts.map(({ loss }) => loss), solved.totalPressure], units);
  const unit = unitOf('pressure', units);
  return (
    <ChartTable caption={words.charts.dock.budget} heads={[says.part, says.takesIn(unit), says.share]}>
      {parts.map(({ cause, share, nodes, segments }, i) => (
        <PlaceRow key={cause} name={capitalized(words.causes.pressure[cause])} place={{ nodes, segments }}>
          <td>{takes[i]}</td>
          <td>{percent(share)}</td>
        </PlaceRow>
      ))}
      <tr className="sum">
        <th scope="row">{says.fanGives}</th>
        <td>{takes.at(-1)}</td>
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
