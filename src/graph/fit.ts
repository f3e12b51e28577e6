import { formatLength } from '../units/index.ts';
import type { Block, Job, Scheme } from './document.ts';
import { bodyFindings } from './fit/bodies.ts';
import { bendInChase, chaseFindings } from './fit/chase.ts';
import { clashes } from './fit/clash.ts';
import { arcPart, blockIndex, cornerOf, legPart, type Room, straightOf } from './fit/room.ts';
import { schemeOf } from './infer.ts';
import { memoise } from './memo.ts';
import { placesOf } from './places.ts';
import type { Finding, Route } from './route.ts';
import { solidBlocks } from './surroundings.ts';

/**
 * Wanted between the outside of a duct and what it passes where the job does not say, m: 1/2 in, room
 * for a hand's tape, screws and a hanger. Common practice; it is no clearance to what can burn.
 */
export const usualClearance = 0.0127;

/**
 * Whether a route fits in its room: the outside of the duct, its wall and insulation included, against
 * the job's blocks. Straight legs are measured exactly, arcs by chords that stray 2 mm at most from their centre line.
 * Findings: `fit-clash` (into a block), `fit-clearance` (nearer than wanted), `fit-chase` (out of the
 * side of a chase that it passes through), `fit-bend` (a bend too long for the chase it turns in), `fit-body` (a hood, cap
 * or part in line that stands in a block).
 * Repeated calls with the same route and blocks are free.
 */
export function fitFindings(job: Job, route: Route): readonly Finding[] {
  return found(
    route,
    solidBlocks(job.blocks),
    job.exits,
    job.units,
    job.clearance,
    schemeOf(job, route.schemeId),
    job.hoods,
    job.kitchen.mountingHeight,
  );
}

const none: readonly Finding[] = [];

const found = memoise(
  (
    route: Route,
    blocks: readonly Block[],
    exits: Job['exits'],
    units: Job['units'],
    clearance: number | undefined,
    scheme: Scheme,
    hoods: Job['hoods'],
    mountingHeight: number | undefined,
  ): readonly Finding[] => {
    if (blocks.length === 0) return none;
    const places = placesOf(route, blocks);
    const room: Room = {
      route,
      exits,
      chases: blocks.filter((block) => block.kind === 'chase'),
      clearance: clearance ?? usualClearance,
      wantedByJob: clearance !== undefined,
      places,
      length: (metres) => formatLength(metres, units, { atLeast: 16 }),
      near: blockIndex(blocks),
    };
    const findings: Finding[] = [];
    const told = new Set<string>();
    for (const id of route.order) {
      const leg = route.segments.get(id);
      const solid = leg && straightOf(leg, route);
      if (!solid || room.near(solid.hull, room.clearance).length === 0) continue;
      const part = legPart(leg, solid, places);
      const here = [...clashes(part, room), ...chaseFindings(part, room)];
      for (const { rule, blocks: met } of here)
        for (const block of met ?? []) told.add(`${rule} ${id} ${block}`);
      findings.push(...here);
    }
    for (const node of route.nodes.values()) {
      const corner = cornerOf(node, route);
      if (!corner || room.near(corner, room.clearance).length === 0) continue;
      const part = arcPart(node, route, places);
      if (!part) continue;
      const clashed = (block: Block) => part.legs.some((leg) => told.has(`fit-clash ${leg.id} ${block.id}`));
      const here = [
        ...clashes(part, room, clashed),
        ...chaseFindings(part, room),
        ...bendInChase(node, part, room),
      ];
      findings.push(
        ...here.filter(({ rule, blocks: met }) =>
          (met ?? []).some((block) => part.legs.every((leg) => !told.has(`${rule} ${leg.id} ${block}`))),
        ),
      );
    }
    const clashed = (leg: string, block: Block) => told.has(`fit-clash ${leg} ${block.id}`);
    return [...findings, ...bodyFindings(room, { scheme, hoods, mountingHeight }, clashed)];
  },
);
