import type { Job, Segment } from '../graph/document.ts';
import { inferRoute, schemeOf } from '../graph/infer.ts';
import { memoise } from '../graph/memo.ts';
import type { Route, RouteNode, RouteSegment } from '../graph/route.ts';
import { hydraulicDiameter, perimeter } from '../hydraulics/section.ts';
import { hangerSpacing, leastHungLeg, type Make, sealing } from './parts/makes.ts';
import { merged, type Part, piece, sizeKey } from './parts/part.ts';
import { type Cutting, type CuttingPlan, cuttingOf } from './parts/plan.ts';
import { ductWeight, fittingWeight, wrapWeight } from './parts/weight.ts';

export { boughtOf, type Part, type PartKind } from './parts/part.ts';
export { partWords } from './parts/words.ts';

/**
 * What has to be bought for a scheme, like things on one line, kinds in the order of `partKinds` and else in the order
 * of the air: straight duct in stock lengths by the cutting plan, bends, changes of size, junctions, caps, parts in
 * line, what joins, fastens, hangs and seals the duct, insulation, and the make-up air that the job has.
 * Hoods and fans are not in it. How duct is sold and joined: `shared/supports.json`; weights:
 * `shared/weights.json`. Repeated calls are free.
 *
 * @throws RangeError if the job has no scheme of that id
 */
export function partsOf(job: Job, schemeId: string): readonly Part[] {
  const scheme = schemeOf(job, schemeId);
  return listed(inferRoute(job, schemeId), scheme, cuttingOf(job, schemeId), job.house?.makeUpAir ?? null);
}

const listed = memoise(
  (
    route: Route,
    scheme: Job['schemes'][number],
    cutting: Cutting,
    makeUp: MakeUp | null,
  ): readonly Part[] => {
    const drawn = new Map(scheme.segments.map((segment) => [segment.id, segment]));
    const caps = new Map(scheme.nodes.map(({ id, cap }) => [id, cap]));
    const parts: Part[] = cutting.plans.map((plan) => ductPart(plan, cutting));
    for (const id of route.order) {
      const leg = route.segments.get(id);
      if (!leg) continue;
      parts.push(...legParts(leg, drawn.get(id)));
      const end = route.nodes.get(leg.to);
      if (end) parts.push(...nodeParts(end, route, caps.get(end.id)));
    }
    for (const node of route.nodes.values()) if (node.kind === 'hood') parts.push(...nodeParts(node, route));
    return merged([...parts, ...joiningParts(cutting), ...makeUpParts(makeUp)]);
  },
);

type MakeUp = NonNullable<NonNullable<Job['house']>['makeUpAir']>;

function ductPart({ key, section, material, bars, stock, used }: CuttingPlan, { spans }: Cutting): Part {
  const mine = spans.filter((span) => span.key === key);
  const weight = ductWeight(material, section, used);
  return {
    key,
    kind: 'duct',
    row: material,
    quantity: mine.reduce((sum, { length }) => sum + length, 0),
    unit: 'm',
    section,
    stock: { count: bars.length, length: stock },
    ...(weight === undefined ? {} : { weight }),
    nodes: [],
    segments: [...new Set(mine.flatMap(({ legs }) => legs.map(({ segment }) => segment)))],
  };
}

function legParts(leg: RouteSegment, drawn: Segment | undefined): Part[] {
  const { section, material, insulation } = leg;
  const at = { section, nodes: [], segments: [leg.id] };
  const parts: Part[] = [];
  if (!leg.vertical && leg.length > leastHungLeg)
    parts.push(piece('hanger', 'hanger', Math.ceil(leg.length / hangerSpacing(material) - 1e-9), at));
  if (insulation > 0) {
    const area = (perimeter(section) + 4 * insulation) * leg.length;
    parts.push(
      {
        key: `insulation/${Math.round(insulation * 1000)}`,
        kind: 'insulation',
        row: 'wrap',
        quantity: area,
        unit: 'm2',
        thickness: insulation,
        weight: wrapWeight(area, insulation),
        nodes: [],
        segments: [leg.id],
      },
      tape(leg.length, [leg.id]),
    );
  }
  for (const fitting of drawn?.fittings ?? []) parts.push(piece('in-line', fitting.kind, 1, at));
  return parts;
}

function nodeParts(node: RouteNode, route: Route, cap?: string): Part[] {
  const parts: Part[] = [];
  const at = { nodes: [node.id], segments: [] };
  const { bend, transition, junction } = node;
  const up = bend && route.segments.get(bend.upstream);
  if (bend && up && bend.kind !== 'flexible') {
    const { angle, radiusRatio } = bend;
    const radius = radiusRatio > 0 ? `/r${Math.round(radiusRatio * 100)}` : '';
    parts.push({
      ...piece('bend', bend.kind, 1, { ...at, section: up.section }, up.material),
      key: `bend/${bend.kind}/${sizeKey(up.section)}/${Math.round(angle)}${radius}`,
      angle,
      radiusRatio,
      ...weighing(fittingWeight(up.material, up.section, (bend.radius * angle * Math.PI) / 180)),
    });
  }
  const down = transition && route.segments.get(transition.downstream);
  if (transition) {
    const { from, to, kind, length } = transition;
    const [large, small] = perimeter(from) >= perimeter(to) ? [from, to] : [to, from];
    parts.push({
      ...piece('transition', kind, 1, { ...at, section: large }),
      key: `transition/${kind}/${sizeKey(large)}/${sizeKey(small)}`,
      to: small,
      ...(down ? weighing(fittingWeight(down.material, large, length)) : {}),
    });
  }
  const whole = junction && route.segments.get(junction.common);
  if (whole)
    parts.push({
      ...piece('junction', 'junction', 1, { ...at, section: whole.section }, whole.material),
      ...weighing(fittingWeight(whole.material, whole.section, hydraulicDiameter(whole.section), 3)),
    });
  const last = node.kind === 'cap' ? route.segments.get(node.segments[0] ?? '') : undefined;
  if (last && (cap ?? 'open') !== 'open')
    parts.push(piece('cap', cap ?? 'open', 1, { ...at, section: last.section }));
  return parts;
}

const weighing = (weight: number | undefined) => (weight === undefined ? {} : { weight });

/** What goes into every joint: at fittings, and between two lengths of one span, which a coupling makes two of. */
function joiningParts({ joints, plans, spans, between }: Cutting): Part[] {
  const parts: Part[] = [];
  for (const { make, section, length, segment } of joints) {
    const at = { section, nodes: [], segments: [segment] };
    if (make.connector?.at === 'every joint') parts.push(piece('coupling', make.connector.row, 1, at));
    parts.push(...joinedBy(make, 1, length, [segment]));
  }
  for (const { key, make, section } of plans) {
    const count = between.get(key) ?? 0;
    if (count === 0) continue;
    const legs = spans.filter((span) => span.key === key).flatMap((span) => span.legs);
    const segments = [...new Set(legs.map(({ segment }) => segment))];
    if (make.connector)
      parts.push(piece('coupling', make.connector.row, count, { section, nodes: [], segments }));
    const sides = make.connector?.at === 'between lengths' ? 2 * count : count;
    parts.push(...joinedBy(make, sides, perimeter(section), segments));
  }
  return parts;
}

/** Fasteners, clamps and what seals so many sides of joints of a girth, m. */
function joinedBy(make: Make, sides: number, girth: number, segments: readonly string[]): Part[] {
  const at = { nodes: [], segments };
  const parts: Part[] = [];
  if (make.fasteners > 0) parts.push(piece('fastener', 'rivet', make.fasteners * sides, at));
  if (make.clamps > 0) parts.push(piece('clamp', 'band', make.clamps * sides, at));
  if (make.seal === 'tape') parts.push(tape(sides * girth, segments));
  if (make.seal === 'sealant')
    parts.push({
      ...at,
      key: 'sealant/duct',
      kind: 'sealant',
      row: 'duct',
      quantity: sides * girth * sealing.litresPerMetre,
      unit: 'L',
    });
  return parts;
}

/** Tape along so many metres of joint or seam. */
function tape(metres: number, segments: readonly string[]): Part {
  const quantity = metres * (1 + sealing.tapeLap);
  return { key: 'tape/foil', kind: 'tape', row: 'foil', quantity, unit: 'm', nodes: [], segments };
}

function makeUpParts(makeUp: MakeUp | null): Part[] {
  if (!makeUp) return [];
  const size = makeUp.kind === 'opening' ? makeUp.area : makeUp.flow;
  return [
    {
      key: `make-up air/${makeUp.kind}/${Math.round(size * 1e4)}`,
      kind: 'make-up air',
      row: makeUp.kind,
      quantity: 1,
      unit: 'piece',
      size,
      nodes: [],
      segments: [],
    },
  ];
}
