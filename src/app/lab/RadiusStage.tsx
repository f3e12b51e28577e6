import { type PointerEvent, useRef } from 'react';
import { bendSketch } from '../../drawing/bend-sketch.ts';
import { svgScale } from '../../drawing/svg-pen.ts';
import { hydraulicDiameter } from '../../hydraulics/section.ts';
import type { Section } from '../../hydraulics/types.ts';
import { words } from '../../words/index.ts';
import { DuctPicture } from './DuctPicture.tsx';

/** The radii that the lab offers, r/D. */
export const radii = { least: 0.5, most: 3, step: 0.05 } as const;

interface RadiusStageProps {
  readonly kind: string;
  readonly radiusRatio: number;
  readonly angle: number;
  /** With the side in the plane of the turn as its width. */
  readonly section: Section;
  /** m of radius for a ratio of 1. */
  readonly side: number;
  readonly onRadius: (radiusRatio: number) => void;
}

/** The turn, true to scale; the middle of its arc is pulled to change the radius. */
export function RadiusStage({ kind, radiusRatio, angle, section, side, onRadius }: RadiusStageProps) {
  const svg = useRef<SVGSVGElement>(null);
  /** From the pointer to the grip, m along the pull. */
  const held = useRef<number | null>(null);
  const half = (Math.min(angle, 150) * Math.PI) / 360;
  const thick = hydraulicDiameter(section);
  const leg = radii.most * side * Math.tan(half) + 0.6 * thick;
  const { drawables, bend } = bendSketch({ kind, radiusRatio, angle, section, leg });
  const edge = 0.75 * Math.max(side, thick);
  const end = { u: leg * Math.cos(2 * half), v: leg * Math.sin(2 * half) };
  const bounds = {
    minU: Math.min(-leg, end.u),
    minV: -edge,
    maxU: Math.max(edge, end.u + edge),
    maxV: end.v,
  };
  const inward = { u: -Math.sin(half), v: Math.cos(half) };
  const pace = 1 / Math.cos(half) - 1;
  const radius = bend?.radius ?? 0;
  const grip = { u: inward.u * pace * radius, v: inward.v * pace * radius };
  const centre = { u: (inward.u * radius) / Math.cos(half), v: (inward.v * radius) / Math.cos(half) };

  const pulled = (event: PointerEvent): number => {
    const matrix = svg.current?.getScreenCTM();
    if (!matrix) return 0;
    const { x, y } = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse());
    return (x * inward.u - y * inward.v) / svgScale;
  };
  const pull = (event: PointerEvent) => {
    if (held.current === null) return;
    const wanted = (pulled(event) + held.current) / pace / side;
    const ratio = Math.min(radii.most, Math.max(radii.least, Math.round(wanted * 100) / 100));
    if (ratio !== radiusRatio) onRadius(ratio);
  };
  const r = 0.07 * leg * svgScale;
  return (
    <DuctPicture
      svg={svg}
      drawables={drawables}
      bounds={bounds}
      className="stage"
      label={words.lab.turn.picture(String(Math.round(angle)))}
      lit={(item) => item.of === 'node'}
    >
      {radius > 0 && (
        <g>
          <path
            className="radius-line"
            d={`M${mm(centre)}L${mm(grip)}M${mm({ u: centre.u - 0.02, v: centre.v })}h40M${mm({ u: centre.u, v: centre.v + 0.02 })}v40`}
          />
          <circle
            className="grip"
            data-grip="radius"
            cx={grip.u * svgScale}
            cy={-grip.v * svgScale}
            r={r / 2}
            onPointerDown={(event) => {
              event.preventDefault();
              event.currentTarget.setPointerCapture(event.pointerId);
              held.current = pace * radius - pulled(event);
            }}
            onPointerMove={pull}
            onPointerUp={() => {
              held.current = null;
            }}
            onPointerCancel={() => {
              held.current = null;
            }}
          />
        </g>
      )}
    </DuctPicture>
  );
}

function mm({ u, v }: { readonly u: number; readonly v: number }): string {
  return `${(u * svgScale).toFixed(2)} ${(-v * svgScale).toFixed(2)}`;
}
