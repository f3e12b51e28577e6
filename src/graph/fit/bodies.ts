import { findInline } from '../../hydraulics/catalogue.ts';
import { words } from '../../words/index.ts';
import { type Body, capBody, hoodProfile, inlineBody } from '../bodies.ts';
import type { Block, Hood, InlinePart, Scheme, Vec3 } from '../document.ts';
import type { Finding, RouteNode, RouteSegment } from '../route.ts';
import { add, cross, normalize, scale } from '../vector.ts';
import { clashes } from './clash.ts';
import { hullOf } from './gap.ts';
import { around, type Part, type Room } from './room.ts';
import { type Tube, tubeOf } from './tube.ts';

const says = words.bodies;

/** What stands on a run beside its duct. */
export interface Fixtures {
  readonly scheme: Scheme;
  readonly hoods: readonly Hood[];
  readonly mountingHeight: number | undefined;
}

/**
 * Where the bodies of hoods, caps and parts in line stand in blocks: `fit-body`. Their sizes are those that the sheets
 * draw, so a finding is a warning and says so. A hood counts by the width and depth that it gives, never by a
 * guess. What its duct may pass, a body may too, and what its duct is `told` to run into is not said again.
 */
export function bodyFindings(
  room: Room,
  fixtures: Fixtures,
  told: (leg: string, block: Block) => boolean,
): readonly Finding[] {
  const close: Room = { ...room, clearance: 0 };
  return partsOf(room, fixtures).flatMap((part) =>
    clashes(part, close, (block) => part.legs.some((leg) => told(leg.id, block))).map(
      (finding): Finding => ({
        ...finding,
        rule: 'fit-body',
        severity: 'warning',
        id: finding.id.replace(/^[^:]*/, 'fit-body'),
        message: says.asDrawn(finding.message),
      }),
    ),
  );
}

function partsOf({ route, places }: Room, { scheme, hoods, mountingHeight }: Fixtures): Part[] {
  const parts: Part[] = [];
  for (const drawn of scheme.nodes) {
    const node = route.nodes.get(drawn.id);
    const leg = route.segments.get(node?.segments[0] ?? '');
    if (!node || !leg) continue;
    const hood = node.kind === 'hood' ? hoods.find(({ id }) => id === drawn.hood) : undefined;
    const body = node.kind === 'cap' ? capBody(drawn.cap ?? 'open') : null;
    const tubes = hood ? hoodTubes(hood, node, mountingHeight) : body ? capTubes(body, node, leg) : [];
    const what = hood ? says.hood : says.cap;
    if (tubes.length > 0)
      parts.push(partOf(() => what(places.node(node.id)), tubes, leg, { nodes: [node.id], segments: [] }));
  }
  for (const segment of scheme.segments) {
    const leg = route.segments.get(segment.id);
    const duct = leg && segment.fittings?.length ? tubeOf(leg, route) : null;
    const from = leg && route.nodes.get(leg.from);
    if (!leg || !duct || !from) continue;
    for (const part of segment.fittings ?? []) {
      const name = part.name ?? findInline(part.kind)?.name ?? part.kind;
      const where = { nodes: [], segments: [leg.id] };
      const words = () => says.inline(name.toLowerCase(), places.leg(leg.id));
      parts.push(partOf(words, [inlineTube(part, duct, from, leg)], leg, where));
    }
  }
  return parts;
}

function partOf(
  words: () => string,
  tubes: readonly Tube[],
  leg: RouteSegment,
  where: Pick<Part, 'nodes' | 'segments'>,
): Part {
  return { words, ...where, tubes, hull: around(tubes.map(hullOf)), legs: [leg] };
}

const level: readonly [Vec3, Vec3] = [
  [1, 0, 0],
  [0, 1, 0],
];

/** The lip of a hood that gives its width, as deep as it says or as its collar; none for one that does not. */
function hoodTubes(hood: Hood, { at }: RouteNode, mountingHeight: number | undefined): Tube[] {
  if (hood.width === undefined) return [];
  const { collar } = hood;
  const { bottom, lip } = hoodProfile(hood, mountingHeight, at[2]);
  const depth = hood.depth ?? (collar.shape === 'round' ? collar.diameter : collar.height);
  const height = (z: number): Vec3 => [at[0], at[1], z];
  return [
    { a: height(bottom), b: height(lip), across: level, half: [hood.width / 2, depth / 2], rounding: 0 },
  ];
}

function capTubes({ from, to, reach, round }: Body, { at }: RouteNode, leg: RouteSegment): Tube[] {
  const half = halfOf(leg);
  const along = leg.direction;
  const up: Vec3 = Math.abs(along[2]) > 0.9 ? [0, 1, 0] : [0, 0, 1];
  const side = normalize(cross(along, up));
  const place = (halves: number) => add(at, scale(along, halves * half));
  return [
    {
      a: place(from),
      b: place(to),
      across: [side, cross(side, along)],
      half: round ? [0, 0] : [reach * half, reach * half],
      rounding: round ? reach * half : 0,
    },
  ];
}

function inlineTube(part: InlinePart, duct: Tube, from: RouteNode, leg: RouteSegment): Tube {
  const [along, across] = inlineBody(part.kind);
  const middle = leg.reversed ? leg.length - part.at : part.at;
  const reach = along * halfOf(leg);
  const place = (metres: number) =>
    add(from.at, scale(leg.direction, Math.min(leg.length, Math.max(0, metres))));
  return {
    a: place(middle - reach),
    b: place(middle + reach),
    across: duct.across,
    half: [duct.half[0] * across, duct.half[1] * across],
    rounding: duct.rounding * across,
  };
}

/** Half of the duct's size, by which bodies are drawn, m. */
function halfOf({ section }: RouteSegment): number {
  return (section.shape === 'round' ? section.diameter : Math.min(section.width, section.height)) / 2;
}
