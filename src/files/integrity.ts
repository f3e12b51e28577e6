import type { FanSpeed, Hood, Job, Node, Scheme, Segment } from '../graph/document.ts';
import {
  bends,
  caps,
  findBend,
  findCap,
  findInline,
  findMaterial,
  inlineParts,
  materials,
} from '../hydraulics/catalogue.ts';
import { words } from '../words/index.ts';

const says = words.fileProblems.integrity;

/** Something that the schema cannot see: a name that leads nowhere, an id used twice. */
export interface Fault {
  readonly path: string;
  readonly message: string;
  /** Present where a repair guesses no number: what it does, and the deed on the checked job itself. */
  readonly repair?: { readonly message: string; readonly apply: () => void };
}

/**
 * Everything that does not hold together in a job of valid form: ids used twice, names of hoods, nodes
 * and catalogue rows that lead nowhere, speeds given in no way or in several, boxes turned inside out.
 * Repairs, where offered, change `job` in place.
 */
export function faultsOf(job: Job): Fault[] {
  const hoodIds = new Set(job.hoods.map((hood) => hood.id));
  const boxIds = new Set([...job.blocks, ...job.exits].map((box) => box.id));
  return [
    ...twice(job.hoods, 'hoods'),
    ...twice(job.schemes, 'schemes'),
    ...twice(job.blocks, 'blocks'),
    ...twice(job.exits, 'exits'),
    ...twice(job.underlays, 'underlays'),
    ...job.hoods.flatMap((hood, i) => hoodFaults(hood, `hoods[${i}]`)),
    ...job.blocks.flatMap((box, i) => boxFaults(box, `blocks[${i}]`)),
    ...job.exits.flatMap((box, i) => boxFaults(box, `exits[${i}]`)),
    ...twice(job.sheetNotes ?? [], 'sheetNotes'),
    ...underlayFaults(job),
    ...job.schemes.flatMap((scheme, i) => schemeFaults(scheme, `schemes[${i}]`, hoodIds, boxIds)),
  ];
}

function twice(rows: { id: string }[], path: string): Fault[] {
  const ids = new Set(rows.map((row) => row.id));
  const seen = new Set<string>();
  const faults: Fault[] = [];
  rows.forEach((row, i) => {
    if (!seen.has(row.id)) {
      seen.add(row.id);
      return;
    }
    const fresh = freshId(row.id, ids);
    ids.add(fresh);
    faults.push({
      path: `${path}[${i}].id`,
      message: says.twice(row.id),
      repair: {
        message: says.renamed(row.id, fresh),
        apply: () => {
          row.id = fresh;
        },
      },
    });
  });
  return faults;
}

function freshId(id: string, taken: ReadonlySet<string>): string {
  for (let n = 2; ; n += 1) {
    const fresh = `${id.slice(0, 56)}-${n}`;
    if (!taken.has(fresh)) return fresh;
  }
}

function hoodFaults(hood: Hood, path: string): Fault[] {
  const names = new Set<string>();
  return hood.speeds.flatMap((speed, i) => {
    const at = `${path}.speeds[${i}]`;
    const faults = speedFaults(speed, hood, at);
    if (names.has(speed.name)) faults.push({ path: `${at}.name`, message: says.sameName(speed.name) });
    names.add(speed.name);
    return faults;
  });
}

const waysToGiveASpeed = ['curve', 'certified', 'freeAir', 'single', 'scaledFrom'] as const;

function speedFaults(speed: FanSpeed, hood: Hood, path: string): Fault[] {
  const given = waysToGiveASpeed.filter((way) => speed[way] !== undefined);
  const faults: Fault[] = [];
  if (given.length !== 1) {
    const ways = waysToGiveASpeed.join(', ');
    const message = given.length === 0 ? says.noneGiven(ways) : says.severalGiven(ways, given.join(says.and));
    faults.push({ path, message });
  }
  const points = speed.curve ?? speed.certified ?? [];
  const falling = points.findIndex((point, i) => i > 0 && point[0] <= (points[i - 1]?.[0] ?? 0));
  if (falling > 0) {
    const way = speed.curve ? 'curve' : 'certified';
    faults.push({
      path: `${path}.${way}[${falling}]`,
      message: says.mustRise,
    });
  }
  if (speed.scaledFrom && !reachesACurve(speed, hood)) {
    faults.push({
      path: `${path}.scaledFrom.speed`,
      message: says.noSpeed(speed.scaledFrom.speed),
    });
  }
  return faults;
}

function reachesACurve(speed: FanSpeed, hood: Hood): boolean {
  let current: FanSpeed | undefined = speed;
  for (let steps = 0; current?.scaledFrom && steps <= hood.speeds.length; steps += 1) {
    const name: string = current.scaledFrom.speed;
    current = hood.speeds.find((other) => other.name === name);
  }
  return current !== undefined && current.scaledFrom === undefined;
}

type Box = Pick<Job['blocks'][number], 'min' | 'max'>;

function boxFaults(box: Box, path: string): Fault[] {
  const low = box.min.map((low, i) => Math.min(low, box.max[i] ?? low)) as Box['min'];
  const high = box.min.map((low, i) => Math.max(low, box.max[i] ?? low)) as Box['max'];
  if (low.every((value, i) => value === box.min[i])) return [];
  return [
    {
      path: `${path}.min`,
      message: says.mustBeBelow,
      repair: {
        message: says.exchanged,
        apply: () => {
          box.min = low;
          box.max = high;
        },
      },
    },
  ];
}

function underlayFaults(job: Job): Fault[] {
  return job.underlays.flatMap((underlay, i): Fault[] => {
    if (underlay.image.startsWith('data:image/')) return [];
    return [
      {
        path: `underlays[${i}].image`,
        message: says.mustHold,
        repair: {
          message: says.underlayDropped,
          apply: () => {
            job.underlays = job.underlays.filter((other) => other !== underlay);
          },
        },
      },
    ];
  });
}

function schemeFaults(
  scheme: Scheme,
  path: string,
  hoodIds: ReadonlySet<string>,
  boxIds: ReadonlySet<string>,
): Fault[] {
  const { defaults } = scheme;
  const nodeIds = new Set(scheme.nodes.map((node) => node.id));
  const bend = typeof defaults.bend === 'string' ? defaults.bend : defaults.bend?.kind;
  const bendPath = typeof defaults.bend === 'string' ? 'bend' : 'bend.kind';
  return [
    ...twice(scheme.nodes, `${path}.nodes`),
    ...twice(scheme.segments, `${path}.segments`),
    ...known('material', defaults.material, `${path}.defaults.material`, findMaterial, materials),
    ...known('bend', bend, `${path}.defaults.${bendPath}`, findBend, bends),
    ...scheme.nodes.flatMap((node, i) => nodeFaults(node, `${path}.nodes[${i}]`, hoodIds)),
    ...scheme.segments.flatMap((segment, i) =>
      segmentFaults(segment, `${path}.segments[${i}]`, scheme, nodeIds),
    ),
    ...twice(scheme.dimensions ?? [], `${path}.dimensions`),
    ...dimensionFaults(scheme, path, nodeIds, boxIds),
  ];
}

function dimensionFaults(
  scheme: Scheme,
  path: string,
  nodeIds: ReadonlySet<string>,
  boxIds: ReadonlySet<string>,
): Fault[] {
  return (scheme.dimensions ?? []).flatMap((dimension, i): Fault[] => {
    const end = (['from', 'to'] as const).find((side) => {
      const { [side]: place } = dimension;
      return ('node' in place && !nodeIds.has(place.node)) || ('box' in place && !boxIds.has(place.box));
    });
    if (end === undefined) return [];
    const place = dimension[end];
    const follows = 'box' in place ? 'box' : 'node';
    const why = 'box' in place ? says.noBlock(place.box) : says.noNode('node' in place ? place.node : '');
    return [
      {
        path: `${path}.dimensions[${i}].${end}.${follows}`,
        message: why,
        repair: {
          message: says.dimensionDropped(dimension.id, why),
          apply: () => {
            scheme.dimensions = (scheme.dimensions ?? []).filter((other) => other !== dimension);
          },
        },
      },
    ];
  });
}

function nodeFaults(node: Node, path: string, hoodIds: ReadonlySet<string>): Fault[] {
  const faults = [
    ...known('bend', node.bend?.kind, `${path}.bend.kind`, findBend, bends),
    ...known('cap', node.cap, `${path}.cap`, findCap, caps),
  ];
  for (const key of ['hood', 'fan'] as const) {
    const id = node[key];
    if (node.role === key && id === undefined) faults.push({ path: `${path}.${key}`, message: says.missing });
    if (id !== undefined && !hoodIds.has(id))
      faults.push({ path: `${path}.${key}`, message: says.noHood(id) });
  }
  return faults;
}

function segmentFaults(
  segment: Segment,
  path: string,
  scheme: Scheme,
  nodeIds: ReadonlySet<string>,
): Fault[] {
  const drop = (why: string): NonNullable<Fault['repair']> => ({
    message: says.segmentDropped(segment.id, why),
    apply: () => {
      scheme.segments = scheme.segments.filter((other) => other !== segment);
    },
  });
  const faults: Fault[] = [];
  const lost = (['from', 'to'] as const).find((end) => !nodeIds.has(segment[end]));
  if (lost !== undefined) {
    const why = says.noNode(segment[lost]);
    faults.push({ path: `${path}.${lost}`, message: why, repair: drop(why) });
  } else if (segment.from === segment.to) {
    const why = says.sameEnds(segment.to);
    faults.push({ path: `${path}.to`, message: why, repair: drop(why) });
  }
  faults.push(...known('material', segment.material, `${path}.material`, findMaterial, materials));
  segment.fittings?.forEach((part, i) => {
    const at = `${path}.fittings[${i}]`;
    if (part.kind !== 'user') faults.push(...known('part', part.kind, `${at}.kind`, findInline, inlineParts));
    else if (part.user === undefined) faults.push({ path: `${at}.user`, message: says.missing });
  });
  return faults;
}

function known(
  what: keyof typeof says.kinds,
  id: string | undefined,
  path: string,
  find: (id: string) => unknown,
  rows: readonly { readonly id: string }[],
): Fault[] {
  if (id === undefined || find(id) !== undefined) return [];
  const ids = rows.map((row) => row.id).join(', ');
  return [{ path, message: says.notInCatalogue(says.kinds[what], id, ids) }];
}
