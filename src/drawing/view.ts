import type { Vec3 } from '../graph/document.ts';
import type { SheetId } from '../graph/sheet.ts';
import { words } from '../words/index.ts';

const says = words.sheets.titles;

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
  floor: { name: says.floor, looking: says.lookingDown },
  'section-x': { name: says.section, looking: says.lookingNorth },
  'section-y': { name: says.section, looking: says.lookingWest },
};

const { along } = words.sheets;

/** What a leg that runs along the line of sight does, in words of the sheet. */
export const alongSight: Readonly<Record<SheetId, { readonly toward: string; readonly away: string }>> = {
  floor: { toward: along.up, away: along.down },
  'section-x': { toward: along.south, away: along.north },
  'section-y': { toward: along.east, away: along.west },
};
