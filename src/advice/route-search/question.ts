import type { ExitFace, Job, Node, Scheme, Vec3 } from '../../graph/document.ts';
import { usualClearance } from '../../graph/fit.ts';
import { schemeOf } from '../../graph/infer.ts';
import { speedCurve } from '../../graph/speeds.ts';
import { normalize, subtract } from '../../graph/vector.ts';
import { findBend, findMaterial } from '../../hydraulics/catalogue.ts';
import { defaultRadiusRatio } from '../../hydraulics/losses/bends.ts';
import type { Section } from '../../hydraulics/types.ts';
import { INCH } from '../../units/index.ts';
import { type Axis, type Direction, directionOf } from './grid.ts';

export type RoundDuct = Extract<Section, { shape: 'round' }>;

/** What a route is looked for with. Lengths in m. */
export interface RouteQuestion {
  /** The scheme that the hood's place and the parts at its collar are taken from. */
  readonly schemeId: string;
  /** The hood's node in it. */
  readonly hood: string;
  /** Which way the air leaves the collar; `up` is 4. */
  readonly outlet: Direction;
  /** Ids of the exit faces that may be used. */
  readonly exits: readonly string[];
  /** All of the room above the collar, or one height that the duct rises to and keeps. */
  readonly space: { readonly kind: 'whole' } | { readonly kind: 'level'; readonly height: number };
  readonly duct: RoundDuct;
  readonly material: string;
  readonly bend: { readonly kind: string; readonly radiusRatio: number };
  readonly clearance: number;
  /** Between neighbouring places where duct may turn. */
  readonly step: number;
  /** The flow that losses are weighed at while searching, m3/s. */
  readonly flow: number;
  /** How many different routes are wanted at most. */
  readonly routes: number;
}

/** What is missing before a route can be looked for. */
export type Missing = 'hood' | 'exit';

/** What a search cannot do without and the job does not have yet. */
export function missingFor(job: Job, schemeId: string): readonly Missing[] {
  const missing: Missing[] = [];
  if (hoodsOf(job, schemeOf(job, schemeId)).length === 0) missing.push('hood');
  if (job.exits.length === 0) missing.push('exit');
  return missing;
}

/** Hoods of the job on the sheets of a scheme. */
export function hoodsOf(job: Job, scheme: Scheme): readonly Node[] {
  return scheme.nodes.filter(
    (node) => node.role === 'hood' && job.hoods.some((hood) => hood.id === node.hood),
  );
}

/**
 * The question as it is asked when nobody says otherwise: duct of the collar's size in the scheme's own
 * material and bend (a smooth bend where the scheme's is made for other duct), to every exit, anywhere
 * above the collar, at the flow that the hood's last speed is rated for. It starts at the given hood, or at the
 * scheme's first. `null` where something is missing.
 */
export function usualQuestion(job: Job, schemeId: string, hoodNode?: string): RouteQuestion | null {
  const scheme = schemeOf(job, schemeId);
  const hoods = hoodsOf(job, scheme);
  const hood = hoods.find(({ id }) => id === hoodNode) ?? hoods[0];
  const data = job.hoods.find(({ id }) => id === hood?.hood);
  if (!hood || !data || missingFor(job, schemeId).length > 0) return null;
  const { duct, material } = scheme.defaults;
  const usual = scheme.defaults.bend ?? 'smooth';
  const asked = typeof usual === 'string' ? { kind: usual } : usual;
  const row = findBend(asked.kind);
  const kind = row && row.section !== 'rectangular' && row.id !== 'flexible' ? row.id : 'smooth';
  const collar = data.collar;
  return {
    schemeId,
    hood: hood.id,
    outlet: outletOf(scheme, hood),
    exits: job.exits.map(({ id }) => id),
    space: { kind: 'whole' },
    duct: collar.shape === 'round' ? collar : duct.shape === 'round' ? duct : roundLike(collar),
    material: findMaterial(material)?.kitchen ? material : 'galvanized',
    bend: {
      kind,
      radiusRatio:
        (asked.kind === kind && 'radiusRatio' in asked && asked.radiusRatio) || defaultRadiusRatio(kind),
    },
    clearance: job.clearance ?? usualClearance,
    step: job.units === 'imperial' ? 4 * INCH : 0.1,
    flow: speedCurve(data, data.speeds.length - 1).ratedFlow,
    routes: 4,
  };
}

/** Round duct as tall as the smaller side of another. */
function roundLike(section: Exclude<Section, RoundDuct>): RoundDuct {
  return { shape: 'round', diameter: Math.max(section.width, section.height) };
}

/** Along the first leg where one is drawn and lies along an axis, else up. */
function outletOf(scheme: Scheme, hood: Node): Direction {
  const leg = scheme.segments.find(({ from, to }) => from === hood.id || to === hood.id);
  const end = scheme.nodes.find(({ id }) => leg && id !== hood.id && (id === leg.from || id === leg.to));
  if (!end) return directionOf(2, 1);
  const way = normalize(subtract(end.at, hood.at));
  const axis = ([0, 1, 2] as const).find((each) => Math.abs(way[each]) > 0.99);
  return axis === undefined ? directionOf(2, 1) : directionOf(axis, way[axis] > 0 ? 1 : -1);
}

/** An exit face as the air from a place meets it. */
export interface Facing {
  readonly direction: Direction;
  /** Coordinates along the direction's axis of the side that is met first, and of the other. */
  readonly inside: number;
  readonly outside: number;
  readonly min: Vec3;
  readonly max: Vec3;
}

/** A roof is left upward; a wall across its thinner side, away from the place. */
export function facing({ kind, ...face }: ExitFace, from: Vec3): Facing {
  const each = (pick: (a: number, b: number) => number): Vec3 => [
    pick(face.min[0], face.max[0]),
    pick(face.min[1], face.max[1]),
    pick(face.min[2], face.max[2]),
  ];
  const [min, max] = [each(Math.min), each(Math.max)];
  const axis: Axis = kind === 'roof' ? 2 : max[0] - min[0] < max[1] - min[1] ? 0 : 1;
  const sense = kind === 'roof' || (min[axis] + max[axis]) / 2 > from[axis] ? 1 : -1;
  const [inside, outside] = sense > 0 ? [min[axis], max[axis]] : [max[axis], min[axis]];
  return { direction: directionOf(axis, sense), inside, outside, min, max };
}
