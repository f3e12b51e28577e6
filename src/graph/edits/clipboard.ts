import { words } from '../../words/index.ts';
import type { BendChoice, Block, Hood, Job, Node, Scheme, Segment, Vec3 } from '../document.ts';
import { schemeOf } from '../infer.ts';
import { sameSection } from '../sections.ts';
import { add } from '../vector.ts';
import { copyOf, type DraftJob, findScheme, freshId, freshIds, plainCopy, read } from './find.ts';
import type { Picked } from './transform.ts';

const says = words.route.clipboard;

/** What was copied, as plain data that can go through text. Duct says what it is made of. */
export interface Clip {
  readonly format: 'gentlebend-clip';
  readonly version: 1;
  readonly nodes: readonly Node[];
  readonly segments: readonly Segment[];
  readonly hoods: readonly Hood[];
  readonly blocks: readonly Block[];
  /** The bend that turns take which choose none for themselves. */
  readonly bend?: NonNullable<Scheme['defaults']['bend']>;
}

/**
 * Copies what is picked: its segments and those between its nodes, with the nodes at their ends, its
 * hoods, its blocks. A turn or a cap without a leg is left out. `null` where nothing remains.
 */
export function clip(job: Job, schemeId: string, picked: Picked): Clip | null {
  const scheme = schemeOf(job, schemeId);
  const chosen = new Set(picked.nodes);
  const whole = new Set(picked.segments);
  const segments = scheme.segments
    .filter(({ id, from, to }) => whole.has(id) || (chosen.has(from) && chosen.has(to)))
    .map((segment) => ({
      duct: scheme.defaults.duct,
      material: scheme.defaults.material,
      ...segment,
    }));
  const ends = new Set(segments.flatMap(({ from, to }) => [from, to]));
  const nodes = scheme.nodes.filter(
    (node) => ends.has(node.id) || (chosen.has(node.id) && node.role === 'hood'),
  );
  const named = new Set(nodes.flatMap(({ hood, fan }) => [hood, fan]));
  const blocks = job.blocks.filter((block) => picked.blocks?.includes(block.id));
  if (nodes.length === 0 && blocks.length === 0) return null;
  return structuredClone({
    format: 'gentlebend-clip',
    version: 1,
    nodes,
    segments,
    hoods: job.hoods.filter((hood) => named.has(hood.id)),
    blocks,
    ...(scheme.defaults.bend !== undefined && { bend: scheme.defaults.bend }),
  });
}

/** The ids that a paste made. */
export interface Pasted {
  readonly nodes: string[];
  readonly segments: string[];
  readonly blocks: string[];
}

/**
 * Puts a copy into a scheme, moved by `delta` metres, under new ids, and gives them. A hood that the
 * job has and the scheme does not show yet is that hood; any other becomes a hood of its own, because
 * one hood cannot hang in two places.
 */
export function paste(job: DraftJob, schemeId: string, copied: Clip, delta: Vec3): Pasted {
  const scheme = findScheme(job, schemeId);
  const hoods = new Map(copied.hoods.map((hood) => [hood.id, hoodFor(job, schemeId, hood)]));
  const ids = new Map<string, string>();
  const usual = asChoice(copied.bend);
  const differs = usual && !sameBend(usual, asChoice(read(scheme).defaults.bend));
  const freshNode = freshIds('n', read(scheme.nodes));
  for (const node of copied.nodes) {
    const id = freshNode();
    ids.set(node.id, id);
    const { hood, fan, ...rest } = plainCopy(node);
    scheme.nodes.push({
      ...rest,
      id,
      at: copyOf(add(node.at, delta)),
      ...(differs && node.role === 'turn' && !node.bend && { bend: usual }),
      ...renamed('hood', hood, hoods),
      ...renamed('fan', fan, hoods),
    });
  }
  const freshSegment = freshIds('d', read(scheme.segments));
  const segments = copied.segments.flatMap((segment) => {
    const from = ids.get(segment.from);
    const to = ids.get(segment.to);
    if (from === undefined || to === undefined) return [];
    const id = freshSegment();
    const { duct, material, ...rest } = plainCopy(segment);
    scheme.segments.push({
      ...rest,
      id,
      from,
      to,
      ...(duct && !sameSection(duct, scheme.defaults.duct) && { duct }),
      ...(material !== undefined && material !== scheme.defaults.material && { material }),
    });
    return id;
  });
  const freshBlock = freshIds('b', read(job.blocks));
  const blocks = copied.blocks.map((block) => {
    const id = freshBlock();
    job.blocks.push({ ...block, id, min: copyOf(add(block.min, delta)), max: copyOf(add(block.max, delta)) });
    return id;
  });
  return { nodes: [...ids.values()], segments, blocks };
}

/** Copies what is picked and puts the copy beside it, `delta` metres away; `null` where nothing is copied. */
export function duplicateSelection(
  job: DraftJob,
  schemeId: string,
  picked: Picked,
  delta: Vec3,
): Pasted | null {
  const copied = clip(read(job) as Job, schemeId, picked);
  return copied && paste(job, schemeId, copied, delta);
}

function asChoice(bend: Clip['bend']): BendChoice | undefined {
  return typeof bend === 'string' ? { kind: bend } : bend && { ...bend };
}

function sameBend(one: BendChoice, other: BendChoice | undefined): boolean {
  return one.kind === other?.kind && one.radiusRatio === other.radiusRatio;
}

function renamed(
  key: 'hood' | 'fan',
  id: string | undefined,
  names: ReadonlyMap<string, string>,
): Partial<Node> {
  const name = id === undefined ? undefined : names.get(id);
  return name === undefined ? {} : { [key]: name };
}

function hoodFor(job: DraftJob, schemeId: string, hood: Hood): string {
  const scheme = read(findScheme(job, schemeId));
  const known = read(job.hoods).some(({ id }) => id === hood.id);
  const shown = scheme.nodes.some((node) => node.hood === hood.id || node.fan === hood.id);
  if (known && !shown) return hood.id;
  const id = known ? freshId('hood-', read(job.hoods)) : hood.id;
  job.hoods.push({ ...plainCopy(hood), id, name: known ? says.another(hood.name) : hood.name });
  return id;
}
