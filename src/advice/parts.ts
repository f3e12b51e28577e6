import supports from '#shared/supports.json' with { type: 'json' };
import type { Job, Segment } from '../graph/document.ts';
import { inferRoute, schemeOf } from '../graph/infer.ts';
import { memoise } from '../graph/memo.ts';
import type { Route, RouteNode, RouteSegment } from '../graph/route.ts';
import { sectionWords } from '../graph/sections.ts';
import { findBend, findCap, findInline, findMaterial } from '../hydraulics/catalogue.ts';
import { perimeter } from '../hydraulics/section.ts';
import type { Section } from '../hydraulics/types.ts';
import { formatAngle, formatDiameter, type System } from '../units/index.ts';

export type PartKind =
  | 'duct'
  | 'bend'
  | 'transition'
  | 'junction'
  | 'cap'
  | 'in-line'
  | 'coupling'
  | 'hanger'
  | 'insulation'
  | 'make-up air';

/** One line of a parts list: what is bought, how much of it, and where it goes. */
export interface Part {
  /** The same for the same thing, whatever the job: `duct/galvanized/round-203`. Prices are kept by it. */
  readonly key: string;
  readonly kind: PartKind;
  /** Catalogue id, or how the thing is made: `conical`, `opening`. */
  readonly row: string;
  /** Metres of duct, square metres of insulation, pieces of all else. */
  readonly quantity: number;
  readonly unit: 'm' | 'm2' | 'piece';
  /** Its own section; of a change of size the larger, of a junction that of the leg with the whole flow. */
  readonly section?: Section;
  /** The smaller section of a change of size. */
  readonly to?: Section;
  /** Degrees, of a bend. */
  readonly angle?: number;
  readonly radiusRatio?: number;
  /** What it is made of, where that is not its row. */
  readonly material?: string;
  /** Thickness of insulation, m. */
  readonly thickness?: number;
  /** Free area, m2, or flow, m3/s, of make-up air. */
  readonly size?: number;
  readonly nodes: readonly string[];
  readonly segments: readonly string[];
  /** Of duct: the straight lengths to cut, m, by leg. */
  readonly lengths?: readonly { readonly segment: string; readonly length: number }[];
}

/**
 * What has to be bought for a scheme, in the order of the air, like things on one line: straight duct between
 * its fittings, bends, changes of size, junctions, caps, parts in line, a coupling at every joint between two
 * stock lengths, hangers by spacing, insulation, and the make-up air that the job has. Hoods and fans are not
 * in it. Stock lengths and spacings: `shared/supports.json` (common practice). Repeated calls are free.
 *
 * @throws RangeError if the job has no scheme of that id
 */
export function partsOf(job: Job, schemeId: string): readonly Part[] {
  return listed(inferRoute(job, schemeId), schemeOf(job, schemeId), job.house?.makeUpAir ?? null);
}

const listed = memoise(
  (route: Route, scheme: Job['schemes'][number], makeUp: MakeUp | null): readonly Part[] => {
    const drawn = new Map(scheme.segments.map((segment) => [segment.id, segment]));
    const caps = new Map(scheme.nodes.map(({ id, cap }) => [id, cap]));
    const parts: Part[] = [];
    for (const id of route.order) {
      const leg = route.segments.get(id);
      if (!leg) continue;
      parts.push(...legParts(leg, drawn.get(id)));
      const end = route.nodes.get(leg.to);
      if (end) parts.push(...nodeParts(end, route, caps.get(end.id)));
    }
    for (const node of route.nodes.values()) if (node.kind === 'hood') parts.push(...nodeParts(node, route));
    return merged([...parts, ...makeUpParts(makeUp)]);
  },
);

type MakeUp = NonNullable<NonNullable<Job['house']>['makeUpAir']>;

function legParts(leg: RouteSegment, drawn: Segment | undefined): Part[] {
  const { section, material, straight } = leg;
  const at = { section, nodes: [], segments: [leg.id] };
  const slack = isFlexible(material);
  const parts: Part[] = [];
  if (straight > 1e-3) {
    parts.push({
      ...at,
      key: `duct/${material}/${sizeKey(section)}`,
      kind: 'duct',
      row: material,
      quantity: straight / leg.stretch,
      unit: 'm',
      lengths: [{ segment: leg.id, length: straight / leg.stretch }],
    });
    const stock = supports.stockLength[slack ? 'flexible' : material === 'spiral' ? 'spiral' : 'rigid'];
    const joints = Math.ceil(straight / leg.stretch / stock - 1e-9) - 1;
    if (joints > 0) parts.push(piece('coupling', 'coupling', joints, at, material));
  }
  const spacing = supports.hangerSpacing[slack ? 'flexible' : 'rigid'];
  if (!leg.vertical && leg.length > supports.leastHungLeg)
    parts.push(piece('hanger', 'hanger', Math.ceil(leg.length / spacing - 1e-9), at));
  if (leg.insulation > 0)
    parts.push({
      key: `insulation/${Math.round(leg.insulation * 1000)}`,
      kind: 'insulation',
      row: 'wrap',
      quantity: (perimeter(section) + 4 * leg.insulation) * leg.length,
      unit: 'm2',
      thickness: leg.insulation,
      nodes: [],
      segments: [leg.id],
    });
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
    });
  }
  if (transition) {
    const { from, to, kind } = transition;
    const [large, small] = perimeter(from) >= perimeter(to) ? [from, to] : [to, from];
    parts.push({
      ...piece('transition', kind, 1, { ...at, section: large }),
      key: `transition/${kind}/${sizeKey(large)}/${sizeKey(small)}`,
      to: small,
    });
  }
  const whole = junction && route.segments.get(junction.common);
  if (whole) parts.push(piece('junction', 'junction', 1, { ...at, section: whole.section }, whole.material));
  const last = node.kind === 'cap' ? route.segments.get(node.segments[0] ?? '') : undefined;
  if (last && (cap ?? 'open') !== 'open')
    parts.push(piece('cap', cap ?? 'open', 1, { ...at, section: last.section }));
  return parts;
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

function piece(
  kind: PartKind,
  row: string,
  quantity: number,
  at: Pick<Part, 'nodes' | 'segments'> & { readonly section?: Section },
  material?: string,
): Part {
  const size = at.section ? `/${sizeKey(at.section)}` : '';
  return {
    ...at,
    key: `${kind}/${row}${size}`,
    kind,
    row,
    quantity,
    unit: 'piece',
    ...(material === undefined ? {} : { material }),
  };
}

/** Lines that are bought as one. */
function merged(parts: readonly Part[]): Part[] {
  const lines = new Map<string, Part>();
  for (const part of parts) {
    const line = lines.get(part.key);
    lines.set(
      part.key,
      line
        ? {
            ...line,
            quantity: line.quantity + part.quantity,
            nodes: [...line.nodes, ...part.nodes],
            segments: [...line.segments, ...part.segments.filter((id) => !line.segments.includes(id))],
            ...(line.lengths && part.lengths ? { lengths: [...line.lengths, ...part.lengths] } : {}),
          }
        : part,
    );
  }
  return [...lines.values()].sort((a, b) => order.indexOf(a.kind) - order.indexOf(b.kind));
}

const order: readonly PartKind[] = [
  'duct',
  'bend',
  'transition',
  'junction',
  'cap',
  'in-line',
  'coupling',
  'hanger',
  'insulation',
  'make-up air',
];

function isFlexible(material: string): boolean {
  return findMaterial(material)?.compression !== undefined || material === 'semi-rigid';
}

/** `round-203`, `rectangular-254x83`: sides to the millimetre, the longer first. */
export function sizeKey(section: Section): string {
  const mm = (metres: number) => Math.round(metres * 1000);
  if (section.shape === 'round') return `round-${mm(section.diameter)}`;
  const [long, short] = [section.width, section.height].sort((a, b) => b - a) as [number, number];
  return `${section.shape}-${mm(long)}x${mm(short)}`;
}

/** What a part is called across the counter: "8" round galvanized steel duct". */
export function partWords(part: Part, units: System): string {
  const size = part.section ? sectionWords(part.section, units) : '';
  const lower = (words: string) => words.charAt(0).toLowerCase() + words.slice(1);
  switch (part.kind) {
    case 'duct':
      return `${size} ${lower(findMaterial(part.row)?.name ?? part.row)} duct`;
    case 'bend': {
      const radius = part.radiusRatio ? `, r/D ${Number(part.radiusRatio.toFixed(2))}` : '';
      return `${size} ${lower(findBend(part.row)?.name ?? part.row)}, ${formatAngle(part.angle ?? 90)}${radius}`;
    }
    case 'transition':
      return `${part.row === 'conical' ? 'Tapered' : 'Abrupt'} change of size, ${size} and ${part.to ? sectionWords(part.to, units) : ''}`;
    case 'cap':
      return `${size} ${lower(findCap(part.row)?.name ?? part.row)}`;
    case 'in-line':
      return `${size} ${lower(findInline(part.row)?.name ?? 'part by its own data')}`;
    case 'insulation':
      return `Duct wrap, ${formatDiameter(part.thickness ?? 0, units)}`;
    case 'make-up air':
      return part.row === 'opening' ? 'Make-up air opening with a damper' : 'Make-up air fan';
    default:
      return `${size} ${part.kind}`;
  }
}
