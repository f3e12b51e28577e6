import type { CSSProperties } from 'react';
import { RouteDrawing } from '../../canvas/route-svg.tsx';
import { scaleBar } from '../../drawing/grid.ts';
import { sheetTitles } from '../../drawing/view.ts';
import type { Job, UnitSystem } from '../../graph/document.ts';
import type { Route } from '../../graph/route.ts';
import { heightOf, type Shown, widthOf } from './drawings.ts';

interface DrawingsProps {
  readonly name: string;
  readonly job: Job;
  readonly route: Route;
  readonly sheets: readonly Shown[];
  readonly units: UnitSystem;
}

/** A scheme on its sheets beside one another, all at one scale, with a bar for it. */
export function Drawings({ name, job, route, sheets, units }: DrawingsProps) {
  const whole = sheets.reduce((sum, { bounds }) => sum + widthOf(bounds), 0);
  const tallest = Math.max(...sheets.map(({ bounds }) => heightOf(bounds)));
  const bar = scaleBar({ scale: 1, panX: 0, panY: 0 }, units, whole / 6);
  const style = {
    '--shape': whole / tallest,
    gridTemplateColumns: sheets.map(({ bounds }) => `${widthOf(bounds)}fr`).join(' '),
  } as CSSProperties;
  return (
    <div className="compare-drawings" style={style}>
      {sheets.map(({ sheet, bounds }) => (
        <RouteDrawing
          key={sheet}
          className="compare-drawing"
          job={job}
          route={route}
          sheet={sheet}
          bounds={bounds}
          label={`${name}, ${sheetTitles[sheet].name.toLowerCase()}`}
        />
      ))}
      {sheets.map(({ sheet }) => (
        <small key={sheet}>
          {sheetTitles[sheet].name}, {sheetTitles[sheet].looking}
        </small>
      ))}
      <small className="compare-scale" style={{ '--long': bar.length / whole } as CSSProperties}>
        {bar.text}
      </small>
    </div>
  );
}
