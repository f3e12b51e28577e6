import { strong } from '../strong.ts';
import { counted } from './plural.ts';

export const levels = {
  cutNorth: 'Cut looking north',
  cutWest: 'Cut looking west',
  workingHeight: 'Working height',
  ceiling: 'ceiling',
  floor: 'floor',
  drag: (name: string) => `${name}: drag in from the edge`,
};

export const field = {
  note: 'Type a note; Enter pins it',
};

export const frame = {
  label: (name: string, looking: string) => `${name} sheet, ${looking}`,
  isometricView: 'Isometric view',
  isometric: 'Isometric',
  workingHeight: 'Working height',
  cutAt: (axis: string) => `Cut at ${axis}`,
  section: 'Section',
  lookingNorth: 'x-z, looking north',
  whole: 'all',
  xz: 'x-z',
  lookingWest: 'y-z, looking west',
  yz: 'y-z',
  sheets: 'Sheets',
  summary: (name: string, looking: string, legs: string, turns: string, risers: string, findings: string) =>
    `${name} sheet, ${looking}: ${legs}, ${turns}, ${risers}, ${findings}.`,
  role: 'drawing sheet',
};

export const hints = {
  select: 'Click a duct or a turn for its numbers. Drag to move it. Delete heals the run.',
  pan: 'Drag to move the sheet. The wheel with Ctrl zooms to the pointer.',
  hood: 'Click on the floor sheet where the middle of the hood is.',
  draw: 'Click the start, then each turn. Type a length for an exact leg. Escape ends the run.',
  cap: 'Click on the open end of a duct.',
  insert: 'Click on a duct to put a turn into it.',
  part: 'Click on a duct to put the part there. Tab or 1–7: another kind.',
  split: 'Click on a turn, a junction or a duct to part the run there.',
  join: 'Click on an open end, then on the end or the turn that it joins.',
  block: 'Click two corners, or type the sizes with Tab between. Before the first, Tab or 1–9: another kind.',
  exit: 'Click two corners, or along the wall. Before the first, Tab: wall or roof.',
  dimension: 'Click two places, then where the line stands. Go on for a chain.',
  note: 'Click where the note is pinned, then type it.',
  measure: 'Click two places to measure between them. Shift keeps it square.',
  underlay: 'Drag an unlocked underlay, or nudge it with the arrow keys. Escape ends.',
  scale: 'Click two points whose distance you know, then type it. Escape ends.',
};

export const places = {
  duct: 'a duct',
  turns: (from: number, to: number) => `turns ${from}–${to}`,
  fromTo: (from: string, to: string) => `${from} to ${to}`,
};

export const names = {
  floor: 'Floor',
  sectionX: 'Section x-z, looking north',
  sectionY: 'Section y-z, looking west',
};

export const isometric = {
  role: 'turned view',
  label: (legs: string) => `Isometric, to look at: ${legs}. Arrow keys turn it, Home brings it back.`,
};

export const legend = {
  velocity: 'Velocity',
  loss: 'Loss per length',
  label: (unit: string) => `Colour of the ducts, ${unit}`,
  by: 'Colour ducts by',
  at: (speed: string) => `at ${speed}`,
  advice: (what: string, source: string) => `${what} Source: ${source}.`,
  advised: (unit: string, from: string, to: string) => `${unit}, advised ${from}–${to}`,
};

export const underlay = {
  unnamed: 'This underlay',
  damaged: (name: string) => `${name} cannot be shown: its picture is damaged.`,
};

export const compass = {
  east: 'E',
  north: 'N',
  up: 'up',
};

export const labels = {
  round: (diameter: string) => `${diameter} dia`,
  oval: (sides: string) => `${sides} oval`,
  trueLength: (length: string) => `${length} true`,
  /** In the corner of a sheet where figures had no room. */
  more: (figures: number) => `zoom in: ${counted(figures, { one: 'more figure', other: 'more figures' })}`,
};

export const turned = {
  sides: {
    south: 'south',
    southEast: 'south-east',
    east: 'east',
    northEast: 'north-east',
    north: 'north',
    northWest: 'north-west',
    west: 'west',
    southWest: 'south-west',
  },
  level: 'level',
  above: (angle: string) => `${angle} above`,
  below: (angle: string) => `${angle} below`,
  from: (side: string, height: string) => `from the ${side}, ${height}`,
};

/** What a leg that runs along the line of sight does: up or towards the viewer, and away. */
export const along = {
  up: 'up',
  down: 'down',
  south: 'south',
  north: 'north',
  east: 'east',
  west: 'west',
  leg: (way: string, length: string) => `${way} ${length}`,
};

export const titles = {
  floor: 'Floor',
  lookingDown: 'looking down',
  section: 'Section',
  lookingNorth: 'looking north',
  lookingWest: 'looking west',
};

export const empty = {
  floor: `Nothing is drawn yet. ${strong('Begin with the hood')}: it stands on the floor sheet, seen from above. Its duct leaves from the collar.`,
  section: `What rises is drawn here: the way up from the hood, a drop, the way to the roof.`,
  ways: {
    'tool.hood': 'Place the hood',
    'file.template': 'Begin with a template',
    'view.guide': 'Show me on the example',
  },
};
