import {
  cssOf,
  dimensionLines,
  dimensionPens,
  type FillMark,
  type Layer,
  type Mark,
  type Pen,
  type TextMark,
} from '../../drawing/marks.ts';
import type { Palette } from '../../drawing/palette.ts';
import type { Stroke } from '../../drawing/stroke.ts';
import { inMillimetres, svgLines, svgOutlines } from '../../drawing/svg-pen.ts';
import { words } from '../../words/index.ts';
import { xmlText } from './drawing-text.ts';
import { type Board, type Footer, footerLine, footerSize, headingSize, type Pinned } from './layout.ts';
import { drawingFamily, type FontPart, fontRules } from './svg-font.ts';

export interface SvgQuery {
  readonly board: Board;
  readonly palette: Palette;
  /** Paper behind the drawing; none where it is to be seen through. */
  readonly paper: boolean;
  readonly title: string;
  readonly description: string;
  /** The font to carry along; a reader without it takes another where there is none. */
  readonly fonts?: readonly FontPart[];
}

/** The families that a drawing's text is set in: its own, else the nearest that a reader may have. */
const family = `'${drawingFamily}', Inter, 'Helvetica Neue', Arial, sans-serif`;

/** From the middle of small letters and figures down to the line they stand on, parts of the font size. */
export const middleToBaseline = 0.36;

/** Paper seen through a little, behind texts. */
export const plateOpacity = 0.86;

interface Ink {
  readonly palette: Palette;
  readonly scale: number;
}

/**
 * Drawings as one SVG file in true size. Its user unit is a millimetre of the building, its width and height are
 * those of the paper; each sheet keeps its own coordinates (east or north to the right, up on the sheet upwards)
 * and is moved to its place as a whole. Layers are groups with ids and labels, text stays text, arcs stay arcs, and
 * nothing is fetched from elsewhere: a font to go with it is inside.
 */
export function svgFile({ board, palette, paper, title, description, fonts = [] }: SvgQuery): string {
  const { scale } = board;
  const size = [board.width, board.height];
  const whole = size.map((mm) => number(mm * scale)) as [string, string];
  const ink: Ink = { palette, scale };
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" xmlns:inkscape="http://www.inkscape.org/namespaces/inkscape" width="${number(board.width)}mm" height="${number(board.height)}mm" viewBox="0 0 ${whole.join(' ')}" font-family="${family}" role="img" aria-labelledby="title description">`,
    `<title id="title">${xmlText(title)}</title>`,
    `<desc id="description">${xmlText(description)}</desc>`,
    `<style>${fontRules(fonts)}text{font-feature-settings:"tnum";white-space:pre}path{stroke-linejoin:round}</style>`,
    ...(paper
      ? [`<rect id="paper" width="${whole[0]}" height="${whole[1]}" fill="${cssOf('sheet', palette)}"/>`]
      : []),
    ...board.sheets.map((sheet) => sheetGroup(sheet, ink)),
    footerGroup(board.footer, ink),
    '</svg>\n',
  ].join('\n');
}

function sheetGroup({ drawing, x, y, heading }: Pinned, ink: Ink): string {
  const { sheet, scale, bounds, layers } = drawing;
  const [left, top] = [x * scale - bounds.minU * 1000, y * scale + bounds.maxV * 1000];
  const head = `<text id="${sheet}-heading" x="${number((x + 4) * scale)}" y="${number((y - 2.4) * scale)}" font-size="${number(headingSize * scale)}" font-weight="600" fill="${cssOf('ink', ink.palette)}">${xmlText(heading)}</text>`;
  const layer = ({ id, marks }: Layer) =>
    `<g id="${sheet}-${id}" inkscape:groupmode="layer" inkscape:label="${xmlText(words.drawings.layer[id])}">\n${marks.map((mark) => markOf(mark, ink)).join('\n')}\n</g>`;
  return `${head}\n<g id="${sheet}" transform="translate(${number(left)} ${number(top)})">\n${layers.map(layer).join('\n')}\n</g>`;
}

function markOf(mark: Mark, ink: Ink): string {
  if (mark.kind === 'fill') return fillOf(mark, ink);
  if (mark.kind === 'line') return linesOf(mark.strokes, mark.pen, ink, mark.of);
  if (mark.kind === 'text') return textOf(mark, ink);
  const { thin, slashes } = dimensionLines(mark, ink.scale);
  const parts = [
    linesOf(thin, dimensionPens.thin, ink),
    linesOf(slashes, dimensionPens.slashes, ink),
    textOf(mark.text, ink),
  ];
  return `<g${about(mark.of)} data-metres="${number(mark.value)}">${parts.join('')}</g>`;
}

function about(of: string | undefined): string {
  return of === undefined ? '' : ` data-of="${xmlText(of)}"`;
}

function fillOf({ outline, paint, opacity, of }: FillMark, { palette }: Ink): string {
  const seen = opacity === undefined ? '' : ` fill-opacity="${opacity}"`;
  return `<path${about(of)} d="${svgOutlines([outline], inMillimetres)}" fill="${cssOf(paint, palette)}"${seen}/>`;
}

function linesOf(strokes: readonly Stroke[], pen: Pen, { palette, scale }: Ink, of?: string): string {
  const dash = pen.dash
    ? ` stroke-dasharray="${pen.dash.map((part) => number(part * scale)).join(' ')}"`
    : '';
  const seen = pen.opacity === undefined ? '' : ` stroke-opacity="${pen.opacity}"`;
  return `<path${about(of)} d="${svgLines(strokes, inMillimetres)}" fill="none" stroke="${cssOf(pen.paint, palette)}" stroke-width="${number(pen.width * scale)}"${dash}${seen}/>`;
}

const anchors = { left: 'start', centre: 'middle', right: 'end' } as const;

function textOf(mark: TextMark, { palette, scale }: Ink): string {
  const { at, align, text, size, weight, paint, of } = mark;
  const { x, y } = inMillimetres(at);
  const line = y + size * scale * middleToBaseline;
  return `${plateOf(mark, palette, scale)}<text${about(of)} x="${number(x)}" y="${number(line)}" font-size="${number(size * scale)}" font-weight="${weight}" text-anchor="${anchors[align]}" fill="${cssOf(paint, palette)}">${xmlText(text)}</text>`;
}

/** Paper behind a text: every program draws a rectangle alike, a rim round letters few. */
function plateOf({ at, behind, width, height }: TextMark, palette: Palette, scale: number): string {
  if (!behind) return '';
  const { x, y } = inMillimetres(at);
  const [w, h] = [width * scale, height * scale * (behind.as === 'rim' ? 0.85 : 1)];
  return `<rect x="${number(x - w / 2)}" y="${number(y - h / 2)}" width="${number(w)}" height="${number(h)}" fill="${cssOf(behind.paint, palette)}" fill-opacity="${plateOpacity}"/>`;
}

function footerGroup({ x, y, lines, bar }: Footer, { palette, scale }: Ink): string {
  const [ink, sheet] = [cssOf('ink', palette), cssOf('sheet', palette)];
  const part = bar.width / bar.parts;
  const says = lines.map(
    (text, i) =>
      `<text x="${number(x * scale)}" y="${number((y + footerLine * i) * scale)}" font-size="${number(footerSize * scale)}"${i === 0 ? ' font-weight="600"' : ''} fill="${cssOf(i === 0 ? 'ink' : 'muted', palette)}">${xmlText(text)}</text>`,
  );
  const parts = Array.from(
    { length: bar.parts },
    (_, i) =>
      `<rect x="${number((bar.x + part * i) * scale)}" y="${number(bar.y * scale)}" width="${number(part * scale)}" height="${number(1.6 * scale)}" fill="${i % 2 === 0 ? ink : sheet}" stroke="${ink}" stroke-width="${number(0.2 * scale)}"/>`,
  );
  const figure = `<text x="${number((bar.x + bar.width + 1.5) * scale)}" y="${number((bar.y + 1.8) * scale)}" font-size="${number(footerSize * scale)}" fill="${ink}">${xmlText(bar.text)}</text>`;
  return `<g id="footer">\n${[...says, `<g id="scale-bar">${parts.join('')}</g>`, figure].join('\n')}\n</g>`;
}

/** To a thousandth of a unit, without what a number need not say. */
function number(value: number): string {
  return String(Math.round(value * 1000) / 1000 + 0);
}
