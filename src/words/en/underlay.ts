export const list = {
  opacity: 'Opacity',
  heading: 'Underlays',
  empty:
    "A scan, a photo or a drawing to trace over: PNG, JPEG, SVG, a page of a PDF, or DXF. It stays in the job's file.",
  place: 'Place an underlay…',
  picture: 'Picture',
  remove: (name: string) => `Remove ${name}`,
  locked: 'Locked',
  invert: 'Invert in dark',
  width: 'Width of the whole picture',
  widthRefused: 'A picture is wider than nothing.',
  scaleByPoints: 'Scale by two points',
  move: 'Move',
};

export const place = {
  page: 'Page',
  pageNumber: (page: number) => `Page ${page}`,
  notDrawn: 'not drawn',
  heading: (name: string) => `Place ${name}`,
  sheet: 'Under which sheet',
  lock: 'Lock it, so that it cannot be moved by hand',
  place: 'Place',
  scaleUnknown: 'Its scale is not known. Next, click two points whose distance you know, and type it.',
  unitAssumed: (unit: string, across: string, down: string) =>
    `The file names no unit; taken as ${unit}, the drawing is ${across} by ${down}. Check a distance that you know before relying on it.`,
  ownScale: (across: string, down: string) => `The drawing says its own scale: it is ${across} by ${down}.`,
  scale: 'Scale of the drawing on its paper',
  byPoints: 'By two points, next',
  byPointsMeans: 'Click two points whose distance you know. Surest for a scan or a copy.',
};

export const desk = {
  refused: (name: string) => `${name} was not placed`,
  refusedText: (why: string) => `Nothing on the board has changed. ${why}`,
  placed: (name: string) => `${name} was placed`,
  reading: 'Reading the file…',
  drawingPage: (page: number) => `Drawing page ${page}…`,
  unreadable: (why: string) => `The file could not be read (${why}). Export it as a PNG, and choose that.`,
};
