import type { Job } from '../graph/document.ts';
import { inferRoute } from '../graph/infer.ts';
import type { RouteBend } from '../graph/route.ts';
import { emptyJob } from '../graph/templates.ts';
import type { Section } from '../hydraulics/types.ts';
import { outlineOf } from './outline.ts';
import type { Drawable } from './stroke.ts';

/** A turn by itself, laid flat: its corner at 0, 0, the air coming along `u` and turning to the left. */
export interface SketchQuery {
  readonly kind: string;
  readonly radiusRatio: number;
  /** Deflection, degrees. */
  readonly angle: number;
  /** As the turn lies: for rectangular and oval duct the width is the side in its plane. */
  readonly section: Section;
  /** Of each leg, corner to end, m. */
  readonly leg: number;
}

export interface Sketch {
  readonly drawables: readonly Drawable[];
  readonly bend: RouteBend | null;
}

/** The outlines that a sheet would show of the turn, true to scale, m. */
export function bendSketch({ kind, radiusRatio, angle, section, leg }: SketchQuery): Sketch {
  const turn = (angle * Math.PI) / 180;
  const job: Job = {
    ...emptyJob('metric'),
    schemes: [
      {
        id: 'sketch',
        name: 'Sketch',
        defaults: { duct: section, material: 'galvanized' },
        nodes: [
          { id: 'in', at: [-leg, 0, 0], role: 'turn' },
          { id: 'turn', at: [0, 0, 0], role: 'turn', bend: { kind, radiusRatio } },
          { id: 'out', at: [leg * Math.cos(turn), leg * Math.sin(turn), 0], role: 'turn' },
        ],
        segments: [
          { id: 'up', from: 'in', to: 'turn' },
          { id: 'down', from: 'turn', to: 'out' },
        ],
      },
    ],
  };
  const route = inferRoute(job, 'sketch');
  return {
    drawables: outlineOf(route, job, 'floor').drawables,
    bend: route.nodes.get('turn')?.bend ?? null,
  };
}
