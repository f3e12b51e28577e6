import type { RouteNode } from '../graph/route.ts';
import type { SheetPoint } from '../graph/sheet.ts';
import { dot } from '../graph/vector.ts';
import type { SheetLeg } from './outline.ts';
import { circle, type Drawable, drawable, line, onCircle, polygon, type Stroke } from './stroke.ts';
import { seen } from './tube.ts';
import type { View } from './view.ts';

/** Points of a cap's own drawing: along the air and to its upper side, in halves of the duct's size. */
type Local = readonly (readonly [number, number])[];

interface CapDrawing {
  readonly body: readonly Local[];
  /** The body from above, for a cap on a wall. */
  readonly plan?: readonly Local[];
  readonly lines: readonly Local[];
  /** Radii of the circles seen when the cap faces the viewer, in halves of the duct's size. */
  readonly rings: readonly number[];
}

const plate: Local = [
  [-0.06, -1.5],
  [0.1, -1.5],
  [0.1, 1.5],
  [-0.06, 1.5],
];

const sleeve: Local = [
  [-0.5, -1],
  [0.1, -1],
  [0.1, 1],
  [-0.5, 1],
];

/** A hooded cap from above. */
const cover: Local = [
  [0.1, -1.1],
  [1.35, -1.1],
  [1.35, 1.1],
  [0.1, 1.1],
];

const canopy: Local = [
  [0.1, 1.2],
  [0.45, 1.2],
  [1.35, 0.15],
  [1.35, -1.05],
  [0.1, -1.05],
];

/** Flashing, stack and a domed top over an open gap. */
function domed(gap: number, spread: number): CapDrawing {
  return {
    body: [
      [
        [-0.12, -1.9],
        [0, -1.9],
        [0, 1.9],
        [-0.12, 1.9],
      ],
      [
        [0, -1],
        [gap, -1],
        [gap, 1],
        [0, 1],
      ],
      [
        [gap + 0.35, -spread],
        [gap + 0.5, -spread],
        [gap + 0.85, -spread * 0.62],
        [gap + 0.95, 0],
        [gap + 0.85, spread * 0.62],
        [gap + 0.5, spread],
        [gap + 0.35, spread],
      ],
    ],
    lines: [
      [
        [gap, -0.9],
        [gap + 0.35, -0.9],
      ],
      [
        [gap, 0.9],
        [gap + 0.35, 0.9],
      ],
    ],
    rings: [1, spread],
  };
}

const flap: Local = [
  [0.18, 0.98],
  [0.95, -0.72],
];

const gooseneck: Local = [
  ...Array.from({ length: 13 }, (_, i) => elbow(2.3, Math.PI - (i * Math.PI) / 12)),
  ...Array.from({ length: 13 }, (_, i) => elbow(0.3, (i * Math.PI) / 12)),
];

function elbow(radius: number, angle: number): readonly [number, number] {
  return [0.3 + radius * Math.sin(angle), -1.3 - radius * Math.cos(angle)];
}

const drawings: Readonly<Record<string, CapDrawing>> = {
  open: {
    body: [],
    lines: [
      [
        [0, -1.12],
        [0, 1.12],
      ],
    ],
    rings: [1],
  },
  'wall-flap': {
    body: [sleeve, canopy, plate],
    plan: [sleeve, cover, plate],
    lines: [flap],
    rings: [1, 1.5],
  },
  'wall-hooded': {
    body: [sleeve, canopy, plate],
    plan: [sleeve, cover, plate],
    lines: [
      [
        [0.1, -0.6],
        [1.35, -0.6],
      ],
    ],
    rings: [1, 1.5],
  },
  'wall-louvre': {
    body: [
      sleeve,
      [
        [0.1, -1.2],
        [0.5, -1.2],
        [0.5, 1.2],
        [0.1, 1.2],
      ],
      plate,
    ],
    lines: [-0.9, -0.3, 0.3, 0.9].map(
      (n) =>
        [
          [0.14, n + 0.22],
          [0.62, n - 0.22],
        ] as const,
    ),
    rings: [1, 1.5],
  },
  'roof-low': domed(0.25, 1.7),
  'roof-cap': domed(0.8, 1.6),
  gooseneck: { body: [gooseneck], plan: [sleeve, cover], lines: [], rings: [1, 1.35] },
};

/** The drawing of a catalogue cap: its own, else that of its family (`wall-flap-small` as `wall-flap`). */
function drawingOf(cap: string): CapDrawing {
  const family = Object.keys(drawings).find((id) => cap === id || cap.startsWith(`${id}-`));
  if (family) return drawings[family] as CapDrawing;
  const fallback = cap.startsWith('roof') ? 'roof-cap' : cap.startsWith('wall') ? 'wall-hooded' : 'open';
  return drawings[fallback] as CapDrawing;
}

/** The body of a cap at the end of its leg, as far as the sheet sees it from the side or end on. */
export function capDrawable(node: RouteNode, cap: string, leg: SheetLeg, view: View): Drawable {
  const drawing = drawingOf(cap);
  const base = {
    kind: 'cap',
    id: node.id,
    of: 'node',
    colourOf: null,
    near: dot(node.at, view.toward) + (leg.endOn && leg.toward ? 2 * leg.half : 0),
  } as const;
  const at = seen(node.at, view);
  if (leg.endOn) return drawable({ ...base, ...facing(drawing, at, leg.half) });
  const along = seen(leg.segment.direction, view);
  const length = Math.hypot(along.u, along.v);
  const side = along.u < 0 ? -1 : 1;
  const normal = { u: (-along.v / length) * side, v: (along.u / length) * side };
  const place = ([a, n]: readonly [number, number]): SheetPoint => ({
    u: at.u + (along.u * a + normal.u * n) * leg.half,
    v: at.v + (along.v * a + normal.v * n) * leg.half,
  });
  const fromAbove = view.toward[2] > 0.5;
  const shown = fromAbove && drawing.plan ? drawing.plan : drawing.body;
  const bodies = shown.map((local) => polygon(local.map(place)));
  return drawable({
    ...base,
    fill: bodies.map((body) => [body]),
    walls: bodies,
    fine: shown === drawing.plan ? [] : drawing.lines.map((local) => line(...local.map(place))),
  });
}

function facing(
  drawing: CapDrawing,
  at: SheetPoint,
  half: number,
): { readonly fill: Stroke[][]; readonly walls: Stroke[]; readonly fine: Stroke[] } {
  const outer = Math.max(...drawing.rings);
  const rings = drawing.rings.map((r) => circle(at, r * half));
  const spokes = [0, 1, 2, 3].map((k) => {
    const angle = Math.PI / 4 + (k * Math.PI) / 2;
    return line(onCircle(at, half, angle), onCircle(at, outer * half, angle));
  });
  return { fill: [[circle(at, outer * half)]], walls: rings, fine: outer > 1 ? spokes : [] };
}
