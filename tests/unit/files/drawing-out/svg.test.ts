import { DOMParser, type Element } from '@xmldom/xmldom';
import { describe, expect, it } from 'vitest';
import { palettes } from '../../../../src/drawing/palette.ts';
import { boardOf, type Choice } from '../../../../src/files/drawing-out/layout.ts';
import { svgFile } from '../../../../src/files/drawing-out/svg.ts';
import { partsFor } from '../../../../src/files/drawing-out/svg-font.ts';
import type { Job } from '../../../../src/graph/document.ts';
import { inferRoute } from '../../../../src/graph/infer.ts';
import { solveScheme } from '../../../../src/graph/solve.ts';
import { drawn, places } from '../../../support/drawn.ts';

function read(job: Job, choice: Choice, scale = 50) {
  const route = inferRoute(job, 's1');
  const speed = solveScheme(job, 's1').speeds.at(-1);
  const board = boardOf({ job, route, scale, speed }, choice);
  const text = svgFile({
    board,
    palette: palettes.print,
    paper: true,
    title: job.title,
    description: 'Invented',
  });
  const complaints: string[] = [];
  const onError = (level: string, message: string) => complaints.push(`${level}: ${message}`);
  const document = new DOMParser({ onError }).parseFromString(text, 'text/xml');
  const root = document.documentElement;
  if (!root) throw new Error('an SVG has a root');
  const byId = (id: string) => {
    const found = [...root.getElementsByTagName('*')].find((one) => one.getAttribute('id') === id);
    if (!found) throw new Error(`nothing in the SVG has the id ${id}`);
    return found;
  };
  return { text, root, complaints, byId, board };
}

const attribute = (element: Element, name: string) => element.getAttribute(name) ?? '';

/** The commands of a path: letters with their numbers. */
const commands = (path: Element) =>
  [...attribute(path, 'd').matchAll(/([MLAZ])([^MLAZ]*)/g)].map(([, letter = '', numbers = '']) => ({
    letter,
    values: numbers.trim() === '' ? [] : numbers.trim().split(/\s+/).map(Number),
  }));

const paths = (layer: Element, of: string) =>
  [...layer.getElementsByTagName('path')].filter((path) => attribute(path, 'data-of') === of);

const first = <T>(items: readonly T[]): T => {
  const [item] = items;
  if (item === undefined) throw new Error('there is one at least');
  return item;
};

describe('an SVG of a sheet', () => {
  it('is well-formed, and asks nothing of anywhere else', () => {
    const { complaints, text } = read(drawn(), 'all');
    expect(complaints).toEqual([]);
    expect(text).not.toMatch(/(href|src)\s*=|url\(|@import/);
  });

  it('has its true size: width and height of the paper at its scale, one unit a millimetre of the building', () => {
    const { root, board } = read(drawn(), 'floor', 50);
    const [, , width, height] = attribute(root, 'viewBox').split(' ').map(Number);
    expect(attribute(root, 'width')).toMatch(/mm$/);
    expect(Number.parseFloat(attribute(root, 'width')) * 50).toBeCloseTo(width ?? 0, 1);
    expect(Number.parseFloat(attribute(root, 'height')) * 50).toBeCloseTo(height ?? 0, 1);
    const drawing = first(board.sheets).drawing;
    expect(drawing.width).toBeCloseTo((drawing.bounds.maxU - drawing.bounds.minU) * 20, 9);
  });

  it('draws a leg of 3 m as 60 mm of paper at 1 : 50', () => {
    const { byId, root } = read(drawn(), 'floor', 50);
    const perUnit =
      Number.parseFloat(attribute(root, 'width')) / Number(attribute(root, 'viewBox').split(' ')[2]);
    const line = commands(first(paths(byId('floor-centre'), 'd3')));
    const reached = Math.abs((line[1]?.values[0] ?? 0) - places.n3[0] * 1000);
    expect(reached * perUnit).toBeCloseTo(60, 2);
  });

  it('has the centre line of every leg on the line between its nodes, ending where the bends take over', () => {
    const job = drawn();
    const route = inferRoute(job, 's1');
    const { byId } = read(job, 'floor');
    const tangent = (node: string) => {
      const bend = route.nodes.get(node)?.bend;
      return bend ? bend.radius * Math.tan((bend.angle * Math.PI) / 360) : 0;
    };
    const [from, to] = commands(first(paths(byId('floor-centre'), 'd2')));
    const [x1 = 0, y1 = 0] = from?.values ?? [];
    const [x2 = 0, y2 = 0] = to?.values ?? [];
    expect([x1, x2]).toEqual([places.n2[0] * 1000, places.n2[0] * 1000]);
    expect(-y1).toBeCloseTo((places.n2[1] + tangent('n2')) * 1000, 1);
    expect(-y2).toBeCloseTo((places.n3[1] - tangent('n3')) * 1000, 1);
  });

  it('draws a smooth turn in its plane as true arcs round its centre, walls half a duct off the centre line', () => {
    const job = drawn();
    for (const node of first(job.schemes).nodes)
      if (node.role === 'turn') node.bend = { kind: 'smooth', radiusRatio: 1.5 };
    const { byId } = read(job, 'floor');
    const radius = 1.5 * 203.2;
    const arcs = (layer: string) =>
      paths(byId(layer), 'n3').flatMap((path) => commands(path).filter(({ letter }) => letter === 'A'));
    expect(arcs('floor-centre').map(({ values }) => values[0])).toEqual([expect.closeTo(radius, 2)]);
    const walls = arcs('floor-fittings').map(({ values }) => values[0] ?? 0);
    expect(walls.sort((a, b) => a - b)).toEqual([
      expect.closeTo(radius - 101.6, 2),
      expect.closeTo(radius + 101.6, 2),
    ]);
    const [, arc] = commands(first(paths(byId('floor-centre'), 'n3')));
    expect(arc?.values.slice(5)).toEqual([
      expect.closeTo(places.n3[0] * 1000 + radius, 1),
      expect.closeTo(-places.n3[1] * 1000, 1),
    ]);
  });

  it('has a group for each layer, by its meaning, with a label', () => {
    const { root } = read(drawn(), 'floor');
    const labels = [...root.getElementsByTagName('g')].flatMap((group) => {
      const label = attribute(group, 'inkscape:label');
      return label ? [[attribute(group, 'id'), label]] : [];
    });
    expect(Object.fromEntries(labels)).toMatchObject({
      'floor-duct': 'Duct walls',
      'floor-centre': 'Centre lines',
      'floor-fittings': 'Bends and transitions',
      'floor-hood': 'Hood',
      'floor-cap': 'Cap',
      'floor-dimensions': 'Dimensions',
    });
  });

  it('keeps text as text: the length of every leg that lies in the sheet', () => {
    const { byId } = read({ ...drawn(), units: 'metric' }, 'floor', 20);
    const words = [...byId('floor-dimensions').getElementsByTagName('text')].map((one) => one.textContent);
    expect(words).toContain('3000 mm');
    expect(words).toContain('2000 mm');
  });

  it('puts all sheets at one scale, the section over the floor that it shares its widths with', () => {
    const { byId, board } = read(drawn(), 'all');
    const shift = (id: string) => Number(/translate\(([-\d.]+)/.exec(attribute(byId(id), 'transform'))?.[1]);
    expect(shift('floor')).toBeCloseTo(shift('section-x'), 2);
    expect(new Set(board.sheets.map(({ drawing }) => drawing.scale))).toEqual(new Set([50]));
    for (const [i, a] of board.sheets.entries())
      for (const b of board.sheets.slice(i + 1)) {
        const apart =
          a.x + a.drawing.width <= b.x ||
          b.x + b.drawing.width <= a.x ||
          a.y + a.drawing.height <= b.y ||
          b.y + b.drawing.height <= a.y;
        expect(apart).toBe(true);
      }
  });

  it('shows what people typed as they typed it, whatever it would mean to XML', () => {
    const job = drawn();
    job.title = `<script>alert("1")</script> & ]]> 厨房 \u0007\u0000 a\nb`;
    job.sheetNotes = [{ id: 'm1', sheet: 'floor', at: [0, 0], text: `</text><a href='x'>&amp; \ud800` }];
    const { complaints, root, byId, text } = read(job, 'floor');
    expect(complaints).toEqual([]);
    expect(root.getElementsByTagName('script')).toHaveLength(0);
    expect(root.getElementsByTagName('a')).toHaveLength(0);
    expect(byId('title').textContent).toBe('<script>alert("1")</script> & ]]> 厨房   a b');
    expect(byId('floor-notes').textContent).toContain("</text><a href='x'>&amp; ");
    expect(text).not.toMatch(/\p{Cc}(?<!\n)/u);
  });
});

describe('an SVG with its font inside', () => {
  const ranges = { latin: 'U+0000-00FF,U+2212', greek: 'U+0370-03FF' };
  const job = drawn();
  const board = boardOf({ job, route: inferRoute(job, 's1'), scale: 50 }, 'floor');
  const about = { board, palette: palettes.print, paper: true, title: job.title, description: 'Invented' };

  it('takes those parts of the font that have its letters, and each once', () => {
    expect(partsFor(ranges, 'Duct 6″ − 8')).toEqual(['latin']);
    expect(partsFor(ranges, 'ρ = 1.2, λ')).toEqual(['greek', 'latin']);
    expect(partsFor(ranges, '厨房')).toEqual([]);
  });

  it('has each part as a rule that fetches nothing, for the letters that it holds', () => {
    const fonts = [{ range: ranges.greek, url: 'data:font/woff2;base64,AAAA' }];
    const text = svgFile({ ...about, fonts });
    expect(text).toContain("src:url(data:font/woff2;base64,AAAA) format('woff2');unicode-range:U+0370-03FF}");
    expect(text.match(/url\((?!data:)/)).toBeNull();
    expect(new DOMParser().parseFromString(text, 'text/xml').documentElement?.tagName).toBe('svg');
  });

  it('falls back to families that a reader may have, and last to any without serifs', () => {
    const family = /font-family="([^"]*)"/.exec(svgFile(about))?.[1]?.split(', ');
    expect(family?.[0]).toBe("'Inter Variable'");
    expect(family?.at(-1)).toBe('sans-serif');
    expect(svgFile(about)).not.toContain('@font-face');
  });
});
