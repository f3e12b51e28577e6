import { inlineBody } from '../graph/bodies.ts';
import type { InlinePart } from '../graph/document.ts';
import type { SheetPoint } from '../graph/sheet.ts';
import { add, dot, scale } from '../graph/vector.ts';
import type { SheetLeg } from './outline.ts';
import { circle, type Drawable, drawable, line, polygon, type Stroke } from './stroke.ts';
import { seen } from './tube.ts';
import type { View } from './view.ts';

interface Glyph {
  /** In halves of the duct's size. */
  readonly lines: readonly (readonly (readonly [number, number])[])[];
  /** A pivot in the middle. */
  readonly pivot?: boolean;
}

const zigzag = Array.from({ length: 9 }, (_, i) => [i % 2 === 0 ? -0.22 : 0.22, -1 + i / 4] as const);

const glyphs: Readonly<Record<string, Glyph>> = {
  'backdraught-damper': {
    lines: [
      [
        [-0.2, 0],
        [0.22, 0.9],
      ],
      [
        [-0.2, 0],
        [0.22, -0.9],
      ],
    ],
    pivot: true,
  },
  screen: {
    lines: [-0.75, -0.25, 0.25, 0.75].map((n) => [
      [-0.1, n - 0.12],
      [0.1, n + 0.12],
    ]),
  },
  silencer: {
    lines: [-0.8, 0, 0.8].flatMap((a) => [
      [
        [a - 0.25, 1.05],
        [a + 0.25, 1.3],
      ] as const,
      [
        [a - 0.25, -1.3],
        [a + 0.25, -1.05],
      ] as const,
    ]),
  },
  filter: { lines: [zigzag] },
};

/** Parts in line as short bodies across the duct with a mark inside; none on a leg seen end on. */
export function inlineDrawables(parts: readonly InlinePart[], leg: SheetLeg, view: View): Drawable[] {
  if (leg.endOn) return [];
  return parts.map((part, i) => inlineDrawable(part, i, leg, view));
}

function inlineDrawable(part: InlinePart, index: number, leg: SheetLeg, view: View): Drawable {
  const { segment, half } = leg;
  const along = segment.reversed ? segment.length - part.at : part.at;
  const share = Math.min(1, Math.max(0, along / segment.length));
  const at: SheetPoint = {
    u: leg.from.u + (leg.to.u - leg.from.u) * share,
    v: leg.from.v + (leg.to.v - leg.from.v) * share,
  };
  const run = seen(segment.direction, view);
  const length = Math.hypot(run.u, run.v);
  const place = ([a, n]: readonly [number, number]): SheetPoint => ({
    u: at.u + (run.u * a - (run.v / length) * n) * half,
    v: at.v + (run.v * a + (run.u / length) * n) * half,
  });
  const glyph = part.kind === 'balancing-damper' ? balancing(part.angle ?? 0) : (glyphs[part.kind] ?? plain);
  const [a, n] = inlineBody(part.kind);
  const body = polygon([place([-a, -n]), place([a, -n]), place([a, n]), place([-a, n])]);
  const solid: Stroke[][] = glyph.pivot ? [[circle(at, half * 0.12)]] : [];
  return drawable({
    kind: 'in-line',
    id: `${segment.id}/${index}`,
    of: 'segment',
    colourOf: null,
    near: dot(add(leg.start, scale(segment.direction, along)), view.toward),
    fill: [[body]],
    walls: [body],
    fine: glyph.lines.map((points) => line(...points.map(place))),
    solid,
  });
}

const plain: Glyph = {
  lines: [
    [
      [-0.3, -1.12],
      [0.3, 1.12],
    ],
  ],
};

/** The blade of a balancing damper at its angle from open, degrees. */
function balancing(angle: number): Glyph {
  const turn = (angle * Math.PI) / 180;
  const [a, n] = [Math.cos(turn) * 0.9, Math.sin(turn) * 0.9];
  return {
    lines: [
      [
        [-a, -n],
        [a, n],
      ],
    ],
    pivot: true,
  };
}
