import { counterHeight, usualDepth } from '../graph/bodies.ts';
import type { Block, Job } from '../graph/document.ts';
import { project, type SheetId, type SheetPoint } from '../graph/sheet.ts';
import { circle, line, polygon, type Stroke } from './stroke.ts';
import type { Bounds } from './viewport.ts';

/** Hatch spacing by what a block is, CSS px; null for what is hollow. */
export const hatchSpacing: Readonly<Record<Block['kind'], number | null>> = {
  chase: null,
  cabinet: null,
  obstacle: 8,
  joist: 5,
  beam: 5,
  wall: 6,
  window: null,
  intake: null,
  'lot line': null,
};

/** Hatch spacing of an exit face, CSS px. */
export const exitHatch = 7;

/** A cooktop under its hood: what is seen of it, what is only meant, and its burners. */
export interface CooktopShape {
  readonly solid: readonly Stroke[];
  readonly dashed: readonly Stroke[];
  readonly burners: readonly Stroke[];
}

const burners = [
  [-0.3, -0.24],
  [0.3, -0.24],
  [-0.3, 0.24],
  [0.3, 0.24],
] as const;

/** The cooktops of a job as a sheet shows them, one below each hood of the scheme, m. */
export function cooktopsOn(job: Job, schemeId: string, sheet: SheetId): readonly CooktopShape[] {
  const { cooktop } = job.kitchen;
  if (!cooktop) return [];
  const scheme = job.schemes.find(({ id }) => id === schemeId);
  const hoods = (scheme?.nodes ?? []).filter(({ role }) => role === 'hood');
  return hoods.map(({ at }) => {
    const place = project(at, sheet);
    if (sheet === 'floor') return fromAbove(place, cooktop.width);
    return fromTheSide(place.u, sheet === 'section-y' ? usualDepth : cooktop.width);
  });
}

function fromAbove({ u, v }: SheetPoint, width: number): CooktopShape {
  const depth = usualDepth - 0.03;
  const rings = burners.flatMap(([a, b]) =>
    [0.09, 0.05].map((radius) => circle({ u: u + a * width, v: v + b * depth }, radius)),
  );
  return { solid: [], dashed: [rectangle(u - width / 2, v - depth / 2, width, depth)], burners: rings };
}

/** The range below its hood: a body on the floor and the slab of the cooktop at counter height. */
function fromTheSide(u: number, width: number): CooktopShape {
  const slab = 0.04;
  return {
    solid: [rectangle(u - width / 2, counterHeight - slab, width, slab)],
    dashed: [rectangle(u - width / 2, 0, width, counterHeight - slab)],
    burners: [],
  };
}

function rectangle(u: number, v: number, width: number, height: number): Stroke {
  return boundsOutline({ minU: u, minV: v, maxU: u + width, maxV: v + height });
}

/** Bounds as a closed outline. */
export function boundsOutline({ minU, minV, maxU, maxV }: Bounds): Stroke {
  return polygon([
    { u: minU, v: minV },
    { u: maxU, v: minV },
    { u: maxU, v: maxV },
    { u: minU, v: maxV },
  ]);
}

/** Lines at 45° across a rectangle, `every` metres apart, each cut at its sides. */
export function hatchOf({ minU, minV, maxU, maxV }: Bounds, every: number): readonly Stroke[] {
  const [width, height] = [maxU - minU, maxV - minV];
  const step = every * Math.SQRT2;
  const count = Math.ceil((width + height) / step) - 1;
  return Array.from({ length: Math.max(0, count) }, (_, i) => {
    const along = (i + 1) * step - height;
    const [low, high] = [Math.max(0, -along), Math.min(height, width - along)];
    return line({ u: minU + along + low, v: minV + low }, { u: minU + along + high, v: minV + high });
  });
}
