/** Drawings that leave the desk: their layers, levels and titles. */
export const floorLevel = 'floor';
export const ceilingLevel = 'ceiling';

export const layer = {
  exits: 'Exit faces',
  blocks: 'Blocks of the room',
  hatch: 'Hatching',
  room: 'Floor, ceiling and cooktop',
  fill: 'Fills',
  hood: 'Hood',
  cap: 'Cap',
  duct: 'Duct walls',
  fittings: 'Bends and transitions',
  parts: 'Parts in line',
  centre: 'Centre lines',
  flow: 'Flow arrows',
  names: 'Names',
  labels: 'Sizes and values',
  dimensions: 'Dimensions',
  notes: 'Notes',
};

export const heading = {
  sheet: (name: string, looking: string, scale: number) => `${name}, ${looking}, 1 : ${scale}`,
  isometric: (scale: number) => `Isometric, each axis at 0.82 of 1 : ${scale}`,
};

/** Under every drawing that leaves the desk. */
export const footer = {
  title: (job: string, scheme: string) => `${job}: ${scheme}`,
  measure: (scale: number) => `1 : ${scale} when printed at full size. Lengths are from node to node.`,
  caution:
    'For planning. Local codes, the hood’s installation instructions and a licensed practitioner decide.',
};

export const untitled = 'Kitchen';

/** Imperial scales by their ratio, as they are called: inches of paper a foot. */
const inchesAFoot: Readonly<Record<number, string>> = {
  4: '3',
  8: '1 1/2',
  12: '1',
  16: '3/4',
  24: '1/2',
  32: '3/8',
  48: '1/4',
  64: '3/16',
  96: '1/8',
  128: '3/32',
  192: '1/16',
  384: '1/32',
  768: '1/64',
};

/** As a title block says it: `1:50`, `1/4″ = 1′-0″`. */
export const scaleInBlock = (scale: number): string =>
  inchesAFoot[scale] ? `${inchesAFoot[scale]}″ = 1′-0″` : `1:${scale}`;

export const scaleName = (scale: number): string =>
  inchesAFoot[scale] ? `1 : ${scale} (${inchesAFoot[scale]}" = 1'-0")` : `1 : ${scale}`;

export const command = {
  save: {
    title: 'Save a drawing…',
    also: 'export picture vector SVG PNG DXF CAD image print sheet plan layers',
  },
};

export const dialog = {
  title: 'Save a drawing',
  format: 'Format',
  formats: { svg: 'SVG', png: 'PNG', dxf: 'DXF' },
  about: {
    svg: 'Lines in true size, in layers, for documents and for cutting and drawing programs.',
    png: 'A picture made of pixels, for letters and web pages.',
    dxf: 'Lines and dimensions at 1 : 1 in millimetres, in layers, for CAD. The scale sets the size of the letters.',
  },
  sheet: 'Sheet',
  sheets: {
    all: 'All sheets',
    floor: 'Floor',
    'section-x': 'Section looking north',
    'section-y': 'Section looking west',
    isometric: 'Isometric',
    space: 'Run in space, centre lines only',
  },
  scale: 'Scale',
  colours: 'Colours',
  palettes: { print: 'Print', light: 'Light', dark: 'Dark' },
  background: 'Background',
  backgrounds: { paper: 'Paper', none: 'See-through' },
  resolution: 'Resolution',
  resolutions: (dpi: number) => `${dpi} dots an inch`,
  values: 'Colour and label duct with its velocity or loss',
  valuesInWords: 'Label duct with its velocity or loss',
  font: 'Take the font along: the same letters in every browser, some 65 kB more',
  size: (width: string, height: string) => `${width} × ${height} mm`,
  pixels: (width: string, height: string) => `${width} × ${height} pixels`,
  full: 'At 1 : 1, in millimetres.',
  tooLarge: (dpi: string) =>
    `That is more pixels than a browser can draw. It can draw ${dpi} dots an inch at this scale; or choose a smaller scale.`,
  preview: (what: string) => `Preview: ${what}`,
  space: 'The legs from node to node in three dimensions, in the coordinates of the house.',
  nothing: 'There is no duct to draw yet. Place a hood and draw duct from it first.',
  save: (format: string) => `Save ${format}`,
  working: (percent: string) => `Drawing, ${percent}`,
  saved: (name: string) => `Saved ${name}.`,
  failed: 'The drawing was not saved',
  noPicture: 'The browser could not make a picture of this size.',
  description: (scale: number, units: string) =>
    `Duct route drawn to 1 : ${scale}. One unit is a millimetre of the building; lengths are shown in ${units}.`,
  units: { imperial: 'feet and inches', metric: 'millimetres' },
  fileKind: 'Drawing',
};
