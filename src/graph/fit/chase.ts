import { words } from '../../words/index.ts';
import type { Block, Vec3 } from '../document.ts';
import { sentence } from '../places.ts';
import type { Finding, RouteNode, RouteSegment } from '../route.ts';
import { distance, lerp } from '../vector.ts';
import { holds } from './clash.ts';
import { clipped, gapBetween, wayOut } from './gap.ts';
import { blockWords, contact, fitFinding, type Part, type Room, wayWords } from './room.ts';
import { coverage, type Tube } from './tube.ts';

const says = words.route.fitChase;

/** How far duct stands out of a side of a chase. */
interface Excess {
  readonly axis: 0 | 1 | 2;
  readonly sense: 1 | -1;
  readonly distance: number;
}

const faces = ([0, 1, 2] as const).flatMap((axis) => [
  { axis, sense: 1 as const },
  { axis, sense: -1 as const },
]);

/**
 * Where a part that passes through a chase stands out of its sides. The sides that the centre line of
 * its legs goes through are the chase's openings, and another chase that takes up what stands out is
 * part of the same room. A part that only grazes a chase from outside cuts into its side.
 */
export function chaseFindings(part: Part, room: Room): Finding[] {
  const findings: Finding[] = [];
  for (const chase of room.near(part.hull, 0)) {
    if (chase.kind !== 'chase') continue;
    const inside = part.tubes.filter((tube) => passes(tube.a, tube.b, chase));
    if (inside.length === 0) {
      findings.push(...grazing(part, chase, room));
      continue;
    }
    const worst = worstExcess(part, inside, chase, room);
    if (!worst) continue;
    const by = room.length(worst.distance);
    const { move, side } = wayWords(worst.axis, worst.sense);
    const back = wayWords(worst.axis, worst.sense > 0 ? -1 : 1).move;
    findings.push(
      fitFinding(
        'fit-chase',
        'error',
        part,
        [chase],
        says.stands(sentence(part.words()), by, side, blockWords(chase)),
        {
          remedy: says.back(by, back, move),
        },
      ),
    );
  }
  return findings;
}

/** True where more of the line from `a` to `b` lies in a chase than a touch. */
function passes(a: Vec3, b: Vec3, chase: Block): boolean {
  const part = clipped(a, b, chase);
  return part !== null && (part[1] - part[0]) * distance(a, b) > contact;
}

function worstExcess(part: Part, inside: readonly Tube[], chase: Block, room: Room): Excess | null {
  const lines = part.legs.flatMap((leg): [Vec3, Vec3][] => {
    const from = room.route.nodes.get(leg.from);
    const to = room.route.nodes.get(leg.to);
    return from && to ? [[from.at, to.at]] : [];
  });
  let worst: Excess | null = null;
  for (const { axis, sense } of faces) {
    if (lines.some(([a, b]) => goesOut(a, b, chase, axis, sense))) continue;
    const side = sense > 0 ? chase.max[axis] : chase.min[axis];
    for (const tube of inside) {
      const [enters, leaves] = clipped(tube.a, tube.b, chase) as readonly [number, number];
      const ends = [lerp(tube.a, tube.b, enters), lerp(tube.a, tube.b, leaves)];
      const reach = Math.max(...ends.map((end) => sense * end[axis])) + coverage(tube, axis);
      const distance = reach - sense * side;
      if (distance <= Math.max(contact, worst?.distance ?? 0)) continue;
      if (!goesOn(ends, tube, chase, axis, sense * reach, room)) worst = { axis, sense, distance };
    }
  }
  return worst;
}

/** True where the line from `a` to `b` is partly in a chase and goes out of it by one of its sides. */
function goesOut(a: Vec3, b: Vec3, chase: Block, axis: 0 | 1 | 2, sense: 1 | -1): boolean {
  const part = clipped(a, b, chase);
  if (!part) return false;
  const side = sense > 0 ? chase.max[axis] : chase.min[axis];
  return part.some((t) => {
    const inner = t > 0 && t < 1;
    return inner && Math.abs(lerp(a, b, t)[axis] - side) < 1e-9;
  });
}

/** True where another chase holds the farthest that duct stands out of this one. */
function goesOn(
  ends: readonly Vec3[],
  tube: Tube,
  chase: Block,
  axis: 0 | 1 | 2,
  reach: number,
  room: Room,
): boolean {
  return room.chases.some((other) => {
    if (other === chase) return false;
    return ends.every((end) =>
      ([0, 1, 2] as const).every((k) => {
        const around = k === axis ? 0 : coverage(tube, k);
        const at = k === axis ? reach : end[k];
        return at - around >= other.min[k] - contact && at + around <= other.max[k] + contact;
      }),
    );
  });
}

function grazing(part: Part, chase: Block, room: Room): Finding[] {
  const inAnother = room.chases.some(
    (other) => other !== chase && part.tubes.some((tube) => passes(tube.a, tube.b, other)),
  );
  const ownLegInside = part.nodes.length > 0 && part.legs.some((leg) => legIn(leg, chase, room));
  if (inAnother || ownLegInside) return [];
  const depths = part.tubes
    .filter((tube) => gapBetween(tube, chase) === 0)
    .map((tube) => wayOut(tube, chase))
    .sort((one, other) => other.distance - one.distance);
  const [worst] = depths;
  if (!worst || worst.distance <= contact) return [];
  const by = room.length(worst.distance);
  return [
    fitFinding(
      'fit-chase',
      'error',
      part,
      [chase],
      says.cuts(sentence(part.words()), by, blockWords(chase)),
      { remedy: says.away(by, wayWords(worst.axis, worst.sense).move) },
    ),
  ];
}

function legIn(leg: RouteSegment, chase: Block, room: Room): boolean {
  const from = room.route.nodes.get(leg.from);
  const to = room.route.nodes.get(leg.to);
  return from !== undefined && to !== undefined && passes(from.at, to.at, chase);
}

/** Bends that start or end outside the chase that they turn in, by how much their arc is too long for it. */
export function bendInChase(node: RouteNode, part: Part, room: Room): Finding[] {
  const { bend } = node;
  if (!bend || bend.tangent <= 0) return [];
  return room.near({ min: node.at, max: node.at }, contact).flatMap((chase) => {
    if (chase.kind !== 'chase' || !holds(chase, node.at, -contact)) return [];
    let short = 0;
    let has = 0;
    for (const leg of part.legs) {
      const other = room.route.nodes.get(leg.from === node.id ? leg.to : leg.from);
      if (!other || leg.length === 0) continue;
      const inside = clipped(node.at, other.at, chase);
      const free = (inside?.[1] ?? 0) * leg.length;
      const end = lerp(node.at, other.at, Math.min(1, bend.tangent / leg.length));
      const elsewhere = room.chases.some((each) => each !== chase && holds(each, end, contact));
      if (elsewhere || bend.tangent - free <= Math.max(contact, short)) continue;
      short = bend.tangent - free;
      has = free;
    }
    if (short === 0) return [];
    return [
      fitFinding(
        'fit-bend',
        'warning',
        part,
        [chase],
        says.tooTight(sentence(part.words()), blockWords(chase), room.length(bend.tangent), room.length(has)),
        {
          remedy: says.smallerRadius,
        },
      ),
    ];
  });
}
