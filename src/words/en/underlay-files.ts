import { counted } from './plural.ts';

export const raster = {
  noMemory: 'the browser has no memory for a picture of this size',
  noSurface: 'the browser gives no surface to paint on',
};

export const choose = {
  kinds: 'Picture, PDF or DXF',
};

export const dxfLines = {
  tooMany:
    'The DXF holds more lines than a sheet can show. Export only the floor that matters, or a PDF of it.',
};

export const dxf = {
  binary: 'This is a binary DXF, which is not read. Save it again as ASCII DXF.',
  noLines: 'The DXF holds no lines in its model space. Export what is in it there, or a PDF of the sheet.',
  unreadable: (why: string) =>
    `The DXF cannot be read (${why}). Save it again as ASCII DXF, or export a PDF.`,
  nothing: 'The DXF has no drawing in it. Save it again as ASCII DXF, or export a PDF.',
};

export const keep = {
  kept: (
    size: string,
    width: number,
    height: number,
    keptSize: string,
    keptWidth: number,
    keptHeight: number,
  ) =>
    `The file has ${size} and ${width} × ${height} pixels; the job keeps ${keptSize} and ${keptWidth} × ${keptHeight}, as JPEG.`,
  page: (size: string) => `The page is kept as JPEG of ${size}.`,
  tooLarge: (most: string) =>
    `The picture cannot be brought under ${most}. Save it at fewer dots per inch, and choose that.`,
  megabytes: (size: string) => `${size} MB`,
};

export const markup = {
  tooDeep: 'The SVG nests its parts too deeply to be read.',
  malformed: (line: number) =>
    `The SVG is not well-formed at line ${line}. Export it again from the program it came from.`,
};

export const pdf = {
  noPage: 'The PDF has no page.',
  locked: 'The PDF is locked with a password. Save a copy without one, and choose that.',
  damaged: 'The PDF is damaged and cannot be read. Open it elsewhere and print it to a new PDF.',
  undrawable: (why: string) =>
    `The PDF page cannot be drawn (${why}). Export the page as a PNG, and choose that.`,
};

export const source = {
  empty: (name: string) => `${name} is empty.`,
  tooLarge: (name: string, size: string, most: string) =>
    `${name} has ${size}; at most ${most} are read. Export only the page or floor that matters.`,
  otherKind: (name: string) =>
    `${name} is none of PNG, JPEG, SVG, PDF and DXF. Export it as one of these, and choose that.`,
  page: (name: string, page: number) => `${name}, page ${page}`,
  tooManyPixels: (name: string, width: number, height: number) =>
    `${name} has ${width} × ${height} pixels, more than a browser can hold. Save it at fewer dots per inch, and choose that.`,
  damaged: (name: string) => `${name} is damaged and cannot be shown. Open it elsewhere and export it again.`,
  leftOut: (places: number) =>
    `Scripts, links and what lies outside the file were left out of the SVG (${counted(places, { one: 'place', other: 'places' })}).`,
};

export const svg = {
  nothing: 'The SVG holds nothing that can be drawn. Export it again as plain SVG, or as PDF.',
  notSvg: 'The file is not a drawing in SVG: its first element is not svg.',
  noSize: 'The SVG does not say how large it is. Export it with a width and a height.',
};
