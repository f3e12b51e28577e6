import type { Colour } from './colour.ts';
import { type PdfFont, POINT } from './font.ts';

/** A place on a page: mm from its upper left corner, y down. */
export interface At {
  readonly x: number;
  readonly y: number;
}

export interface Line {
  /** mm */
  readonly width: number;
  readonly colour: Colour;
  /** mm on and off. */
  readonly dash?: readonly number[];
  readonly cap?: 'butt' | 'round';
}

export interface TextStyle {
  readonly font: PdfFont;
  /** Points. */
  readonly size: number;
  readonly colour: Colour;
  /** Figures of one width. */
  readonly tabular?: boolean;
}

/** A path being laid, in mm. */
export interface Path {
  move(at: At): void;
  line(at: At): void;
  /**
   * A circular arc as Bézier curves, truer than a ten-thousandth of its radius. Angles in radians as seen:
   * from the right, counter-clockwise. `joined` goes on from where the path is by a straight line.
   */
  arc(centre: At, radius: number, start: number, end: number, joined?: boolean): void;
  rect(x: number, y: number, width: number, height: number): void;
  close(): void;
}

export interface Look {
  readonly line?: Line;
  readonly fill?: Colour;
  /** 0-1; 1 where absent. */
  readonly opacity?: number;
}

/** A page that is drawn on. Everything is in mm and stays vectors and text. */
export interface Page {
  readonly width: number;
  readonly height: number;
  draw(look: Look, lay: (path: Path) => void): void;
  /** The text with its base line's left end, middle or right end at a place; `turned` reads upwards. */
  text(at: At, text: string, style: TextStyle, align?: 'left' | 'middle' | 'right', turned?: boolean): void;
  /** What `body` draws shows only inside the path. */
  within(lay: (path: Path) => void, body: () => void): void;
  /** The page's operators. */
  content(): string;
  /** Opacities in hundredths that were asked for. */
  opacities(): ReadonlySet<number>;
}

/** An arc is cut into pieces of at most this many radians: one deviates by less than 4e-7 of its radius. */
const longestPiece = Math.PI / 6;

export function createPage(width: number, height: number): Page {
  const ops: string[] = [];
  const opacities = new Set<number>();
  const x = (mm: number) => figure(mm / POINT);
  const y = (mm: number) => figure((height - mm) / POINT);
  const size = (mm: number) => figure(mm / POINT);
  const point = (at: At) => `${x(at.x)} ${y(at.y)}`;

  const path: Path = {
    move: (at) => ops.push(`${point(at)} m`),
    line: (at) => ops.push(`${point(at)} l`),
    arc(centre, radius, start, end, joined = false) {
      const on = (angle: number, along = 0): At => ({
        x: centre.x + radius * (Math.cos(angle) - along * Math.sin(angle)),
        y: centre.y - radius * (Math.sin(angle) + along * Math.cos(angle)),
      });
      const pieces = Math.max(1, Math.ceil(Math.abs(end - start) / longestPiece - 1e-9));
      const step = (end - start) / pieces;
      const pull = (4 / 3) * Math.tan(step / 4);
      ops.push(`${point(on(start))} ${joined ? 'l' : 'm'}`);
      for (let i = 0; i < pieces; i += 1) {
        const [from, to] = [start + step * i, start + step * (i + 1)];
        ops.push(`${point(on(from, pull))} ${point(on(to, -pull))} ${point(on(to))} c`);
      }
    },
    rect: (left, top, wide, high) => ops.push(`${x(left)} ${y(top + high)} ${size(wide)} ${size(high)} re`),
    close: () => ops.push('h'),
  };

  return {
    width,
    height,
    draw({ line, fill, opacity = 1 }, lay) {
      if (!line && !fill) return;
      ops.push('q');
      const hundredths = Math.round(opacity * 100);
      if (hundredths < 100) {
        opacities.add(hundredths);
        ops.push(`/${opacityName(hundredths)} gs`);
      }
      if (fill) ops.push(`${rgb(fill)} rg`);
      if (line) {
        ops.push(`${size(line.width)} w ${line.cap === 'round' ? 1 : 0} J 1 j ${rgb(line.colour)} RG`);
        if (line.dash) ops.push(`[${line.dash.map(size).join(' ')}] 0 d`);
      }
      lay(path);
      ops.push(line && fill ? 'B' : line ? 'S' : 'f', 'Q');
    },
    text(at, text, style, align = 'left', turned = false) {
      if (text === '') return;
      const { font, size: points, colour, tabular } = style;
      const shift = align === 'left' ? 0 : font.width(text, points, tabular) * (align === 'middle' ? 0.5 : 1);
      const from = turned ? { x: at.x, y: at.y + shift } : { x: at.x - shift, y: at.y };
      const matrix = turned ? '0 1 -1 0' : '1 0 0 1';
      ops.push(
        `BT /${font.name} ${figure(points)} Tf ${rgb(colour)} rg ${matrix} ${point(from)} Tm <${font.encode(text, tabular)}> Tj ET`,
      );
    },
    within(lay, body) {
      ops.push('q');
      lay(path);
      ops.push('W n');
      body();
      ops.push('Q');
    },
    content: () => ops.join('\n'),
    opacities: () => opacities,
  };
}

/** What pages call an opacity of so many hundredths. */
export function opacityName(hundredths: number): string {
  return `O${hundredths}`;
}

function rgb({ r, g, b }: Colour): string {
  return `${figure(r)} ${figure(g)} ${figure(b)}`;
}

/** To a ten-thousandth of a point. */
function figure(value: number): string {
  const rounded = Math.round(value * 1e4) / 1e4;
  return String(rounded === 0 ? 0 : rounded);
}
