import { ROOM } from '../hydraulics/house.ts';

/** Names of edges and nodes in the network, so that what is solved finds its way back to the drawing. */
export const named = {
  room: ROOM,
  node: (id: string) => `at/${id}`,
  /** The side of a fan in the run that the air comes in by. */
  inlet: (id: string) => `inlet/${id}`,
  duct: (id: string) => `duct/${id}`,
  fan: (node: string) => `fan/${node}`,
  leak: (node: string) => `leak/${node}`,
} as const;
