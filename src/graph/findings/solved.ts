import type { Block, Job } from '../document.ts';
import { placesOf } from '../places.ts';
import type { Finding } from '../route.ts';
import type { Placed, Scene, SettingSolution } from '../setting.ts';
import type { SpeedResult } from '../solution.ts';
import { airFindings } from './air.ts';
import { fanFindings } from './fans.ts';
import { houseFindings } from './house.ts';

/** A hood with what came of each of its speeds. */
export interface Ran extends Placed {
  readonly speeds: readonly SpeedResult[];
}

/** What the rules look at that only the fans' data and the solve can tell. */
export interface SolvedScheme {
  readonly scene: Scene;
  readonly ran: readonly Ran[];
  /** One entry a setting, lowest first. */
  readonly solutions: readonly SettingSolution[];
  readonly blocks: readonly Block[];
  readonly units: Job['units'];
  readonly profile: Job['profile'];
}

/** What only the solve can tell of a scheme. */
export function solvedFindings(scheme: SolvedScheme): readonly Finding[] {
  const places = placesOf(scheme.scene.route, scheme.blocks);
  return [...houseFindings(scheme), ...fanFindings(scheme, places), ...airFindings(scheme, places)];
}
