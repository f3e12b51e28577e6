import type { Job } from '../../graph/document.ts';
import { transitionAt } from '../../graph/inference/turns.ts';
import { sameSection } from '../../graph/sections.ts';
import { airAt } from '../../hydraulics/air.ts';
import { findBend } from '../../hydraulics/catalogue.ts';
import { partDrop } from '../../hydraulics/element.ts';
import { bendLoss } from '../../hydraulics/losses/bends.ts';
import { capLoss } from '../../hydraulics/losses/caps.ts';
import { roughnessOf } from '../../hydraulics/losses/materials.ts';
import { area, hydraulicDiameter } from '../../hydraulics/section.ts';
import type { LossPart, Section } from '../../hydraulics/types.ts';
import type { RouteQuestion } from './question.ts';

/** What ends a route at an exit of each kind: catalogue ids of `shared/caps.json`. */
export const usualCap = { wall: 'wall-flap', roof: 'roof-cap' } as const;

/** What the parts of a route cost at the flow of the question. Pa, m. */
export interface RouteLosses {
  /** Pa a metre of straight duct. */
  readonly metre: number;
  /**
   * Of a square turn, over and above the straight centre lines to its corner: never less than nothing, so
   * that a turn of very large radius is not sought for its shorter arc.
   */
  readonly turn: number;
  readonly exit: Readonly<Record<'wall' | 'roof', number>>;
  /** Centre-line radius of a turn; 0 for a mitre. */
  readonly radius: number;
  /** Straight duct that a turn takes of each leg: half a diameter at least, room to make a mitre (common practice). */
  readonly tangent: number;
  /** Length of the change of size on the first leg, from the collar. */
  readonly cone: number;
}

/**
 * Losses with every coefficient taken at one flow, which makes them add up whatever the route: the ranking
 * is done again with every route solved.
 */
export function routeLosses(job: Job, question: RouteQuestion, collar: Section): RouteLosses {
  const { duct, material, bend, flow } = question;
  const air = airAt(job.air);
  const drop = (parts: readonly LossPart[]) =>
    parts.reduce((sum, part) => sum + partDrop(part, flow, air), 0);
  const { roughness, multiplier } = roughnessOf(material, duct);
  const size = { hydraulicDiameter: hydraulicDiameter(duct), area: area(duct) };
  const metre = drop([{ kind: 'duct', length: 1, ...size, roughness, multiplier }]);
  const loss = bendLoss({ kind: bend.kind, angle: 90, radiusRatio: bend.radiusRatio, section: duct });
  const mitred = findBend(bend.kind)?.defaultRadiusRatio === 0;
  const radius = mitred ? 0 : bend.radiusRatio * duct.diameter;
  const arc = loss.includesArcFriction ? 0 : (Math.PI / 2) * radius;
  return {
    metre,
    turn: Math.max(0, drop(loss.parts) + metre * (arc - 2 * radius)),
    exit: {
      wall: drop(capLoss({ cap: usualCap.wall, section: duct }).parts),
      roof: drop(capLoss({ cap: usualCap.roof, section: duct }).parts),
    },
    radius,
    tangent: Math.max(radius, duct.diameter / 2),
    cone: sameSection(collar, duct) ? 0 : transitionAt(undefined, collar, duct, '', '').length,
  };
}
