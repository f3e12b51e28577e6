import type { Vec3 } from '../graph/document.ts';
import type { SheetId } from '../graph/sheet.ts';

/** The directions of a sheet in space, as unit vectors. `toward` points at the viewer. */
export interface View {
  readonly right: Vec3;
  readonly up: Vec3;
  readonly toward: Vec3;
  /** Shows hoods and caps as solids, for a view along none of the axes. */
  readonly solid?: boolean;
}

export const views: Readonly<Record<SheetId, View>> = {
  floor: { right: [1, 0, 0], up: [0, 1, 0], toward: [0, 0, 1] },
  'section-x': { right: [1, 0, 0], up: [0, 0, 1], toward: [0, -1, 0] },
  'section-y': { right: [0, 1, 0], up: [0, 0, 1], toward: [1, 0, 0] },
};

export const sheetTitles: Readonly<Record<SheetId, { readonly name: string; readonly looking: string }>> = {
  floor: { name: 'Floor', looking: 'looking down' },
  'section-x': { name: 'Section', looking: 'looking north' },
  'section-y': { name: 'Section', looking: 'looking west' },
};

/** What a leg that runs along the line of sight does, in words of the sheet. */
export const alongSight: Readonly<Record<SheetId, { readonly toward: string; readonly away: string }>> = {
  floor: { toward: 'up', away: 'down' },
  'section-x': { toward: 'south', away: 'north' },
  'section-y': { toward: 'east', away: 'west' },
};
