import { outlineIn } from '../../drawing/outline.ts';
import { svgLines, svgOutlines } from '../../drawing/svg-pen.ts';
import { isometric, turnedView } from '../../drawing/turned.ts';
import { boundsOf } from '../../drawing/viewport.ts';
import type { Job } from '../../graph/document.ts';
import type { SheetPoint } from '../../graph/sheet.ts';
import type { SchemeSolution } from '../../graph/solution.ts';
import { solveScheme } from '../../graph/solve.ts';

/** The file that a job is saved to. */
export interface LinkedFile {
  readonly name: string;
  /** Where the browser can read and write it in place. */
  readonly handle: FileSystemFileHandle | null;
  /** The digest of the text that it held when it was last read or written here. */
  readonly holds: string;
}

/** What is told of a job in one line. */
export interface SchemeSummary {
  readonly name: string;
  readonly legs: number;
  /** Delivered at the fastest speed, m3/s; null where nothing was solved. */
  readonly flow: number | null;
}

/** A small isometric drawing: what is farther comes first, each as data of SVG paths. */
export interface Sketch {
  readonly viewBox: string;
  readonly parts: readonly { readonly fill: string; readonly walls: string }[];
}

/** What a list shows of a job without reading it. */
interface Card {
  readonly id: string;
  readonly title: string;
  /** Characters of its text: near enough its bytes. */
  readonly size: number;
  readonly summary: readonly SchemeSummary[];
  readonly sketch: Sketch | null;
}

/** A job that this browser keeps. Times in milliseconds since 1970. */
export interface JobCard extends Card {
  readonly createdAt: number;
  readonly changedAt: number;
  readonly file: LinkedFile | null;
  /** The digest of the job's text. */
  readonly digest: string;
  /** Nobody has changed it since it was made: nothing is lost with it. */
  readonly fresh: boolean;
  readonly deletedAt: number | null;
  /** The tab that wrote it last. */
  readonly by: string;
}

/** Why a version was kept. */
export type VersionReason = 'named' | 'opened' | 'working' | 'saved' | 'before' | 'elsewhere';

/** A job as it was at some time. */
export interface VersionCard extends Omit<Card, 'title'> {
  readonly job: string;
  readonly at: number;
  readonly reason: VersionReason;
  /** What it was called by hand, or what it was kept before; empty where there is nothing to say. */
  readonly name: string;
  readonly digest: string;
}

/** A job to begin others from. */
export interface TemplateCard extends Card {
  readonly createdAt: number;
  /** Whether it holds the route, or only what stands around it. */
  readonly withRoute: boolean;
}

/** What a card shows of the job itself. */
export type Portrait = Pick<Card, 'title' | 'summary' | 'sketch'>;

/** What is told of a job, and its small drawing; `solve` where its solutions are at hand already. */
export function portrayed(job: Job, solve?: (schemeId: string) => SchemeSolution): Portrait {
  const solutions = job.schemes.map(({ id }) => (solve ? solve(id) : solveScheme(job, id)));
  const drawn = solutions.find(({ route }) => route.segments.size > 0);
  return {
    title: job.title,
    summary: job.schemes.map(({ name, segments }, i) => {
      const outcome = solutions[i]?.speeds.at(-1)?.outcome;
      return { name, legs: segments.length, flow: outcome?.solved ? outcome.flow : null };
    }),
    sketch: drawn ? sketchOf(job, drawn) : null,
  };
}

/** More legs than this are too many for a picture of a thumb's size; their walls would cost more than they tell. */
const mostDrawn = 150;

/** Units of the picture along its longer side. */
const pictureSize = 100;

function sketchOf(job: Job, { route }: SchemeSolution): Sketch | null {
  if (route.segments.size > mostDrawn) return null;
  const { drawables } = outlineIn(route, job, turnedView(isometric));
  const covered = boundsOf(
    drawables.flatMap(({ bounds }) => [
      { u: bounds.minU, v: bounds.minV },
      { u: bounds.maxU, v: bounds.maxV },
    ]),
  );
  if (!covered) return null;
  const [width, height] = [covered.maxU - covered.minU, covered.maxV - covered.minV];
  const scale = pictureSize / Math.max(width, height, 1e-6);
  const place = ({ u, v }: SheetPoint) => ({ x: (u - covered.minU) * scale, y: (covered.maxV - v) * scale });
  const margin = 3;
  const size = [width, height].map((side) => Math.ceil(side * scale) + 2 * margin);
  return {
    viewBox: `${-margin} ${-margin} ${size[0]} ${size[1]}`,
    parts: drawables.map(({ fill, walls }) => ({
      fill: svgOutlines(fill, place),
      walls: svgLines(walls, place),
    })),
  };
}

/** A short name for a text: equal texts have equal ones. It guards against mistakes, not against malice. */
export function digestOf(text: string): string {
  let [a, b] = [0x811c9dc5, 0x1b873593];
  for (let i = 0; i < text.length; i += 1) {
    const code = text.charCodeAt(i);
    a = Math.imul(a ^ code, 0x01000193);
    b = Math.imul(b ^ code, 0x5bd1e995);
    b ^= b >>> 15;
  }
  return [a, b].map((part) => (part >>> 0).toString(36).padStart(7, '0')).join('');
}

/** An id that nothing else has. */
export function freshId(kind: 'job' | 'version' | 'template' | 'tab'): string {
  return `${kind}-${Date.now().toString(36)}-${Math.random().toString(36).slice(2, 10)}`;
}
