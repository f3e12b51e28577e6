import Konva from 'konva/lib/Core.js';
import { Line } from 'konva/lib/shapes/Line.js';
import { createRoot } from 'react-dom/client';
import { type AppStore, createBoard } from '../../../src/app/store.ts';
import { SheetView } from '../../../src/canvas/SheetView.tsx';
import type { SheetHandle } from '../../../src/canvas/sheet-handle.ts';
import { panBy, type Viewport } from '../../../src/drawing/viewport.ts';
import type { Job, Vec3 } from '../../../src/graph/document.ts';
import { moveNodes } from '../../../src/graph/edits/index.ts';
import { emptyJob } from '../../../src/graph/templates.ts';

/** Milliseconds of one frame: ours, of which solving, and the bare scene's. */
interface Row {
  readonly segments: number;
  readonly what: string;
  readonly ours: number;
  readonly solving: number;
  readonly bare: number;
}

declare global {
  var bench: (segments: number) => Promise<Row[]>;
}

const size = { width: 1000, height: 700 };

/** Layers that have asked to be drawn; drawn at once when a measurement says so, pixels and all. */
const dirty = new Set<Konva.Layer>();
Konva.Layer.prototype.batchDraw = function (this: Konva.Layer) {
  dirty.add(this);
  return this;
};
Konva.autoDrawEnabled = false;

function draw(): void {
  const drawn = [...dirty];
  dirty.clear();
  for (const layer of drawn) layer.draw();
  for (const layer of drawn) layer.getContext()._context.getImageData(0, 0, 1, 1);
}

/** Runs of 60 legs, each from a hood of its own to a cap, in rows: stairs that go round corners. */
function manyLegs(segments: number): Job {
  const job = emptyJob('imperial');
  const [scheme] = job.schemes;
  const [hood] = job.hoods;
  if (!scheme || !hood) throw new Error('an empty job has a scheme and a hood');
  scheme.nodes = [];
  scheme.segments = [];
  job.hoods = [];
  const perRun = Math.min(60, segments);
  const columns = Math.ceil(Math.sqrt(segments / perRun / 1.4));
  for (let run = 0; run * perRun < segments; run += 1) {
    const hoodId = `hood-${run}`;
    if (run < 40) job.hoods.push({ ...hood, id: hoodId });
    const count = Math.min(perRun, segments - run * perRun);
    const [x, y] = [(run % columns) * 34, Math.floor(run / columns) * 34];
    for (let i = 0; i <= count; i += 1) {
      const at: Vec3 = [x + Math.ceil(i / 2), y + Math.floor(i / 2), 2.4];
      const id = `n${run}-${i}`;
      const first = i === 0;
      scheme.nodes.push(
        first && run < 40
          ? { id, at, role: 'hood', hood: hoodId }
          : i === count
            ? { id, at, role: 'cap', cap: 'wall-flap' }
            : { id, at, role: 'turn' },
      );
      if (!first) scheme.segments.push({ id: `d${run}-${i}`, from: `n${run}-${i - 1}`, to: id });
    }
  }
  return job;
}

interface Bare {
  readonly layer: Konva.Layer;
  readonly lines: readonly Line[];
  gone(): void;
}

/** As many plain lines in a Konva layer, at the same places. */
function bareScene(job: Job, view: Viewport): Bare {
  const stage = new Konva.Stage({ container: 'bare', ...size, listening: false });
  const layer = new Konva.Layer({ listening: false });
  const scheme = job.schemes[0];
  const places = new Map(scheme?.nodes.map((node) => [node.id, node.at]));
  const lines = (scheme?.segments ?? []).map((segment) => {
    const points = [segment.from, segment.to].flatMap((id) => {
      const at = places.get(id) ?? [0, 0, 0];
      return [at[0] * view.scale, -at[1] * view.scale];
    });
    return new Line({ points, stroke: '#24211b', strokeWidth: 4, perfectDrawEnabled: false });
  });
  layer.add(...lines);
  stage.add(layer);
  layer.position({ x: view.panX, y: view.panY });
  return { layer, lines, gone: () => stage.destroy() };
}

/** Milliseconds of the middle one of some frames, after one that warms up. */
function frame(count: number, change: (i: number) => void): number {
  const times: number[] = [];
  for (let i = 0; i <= count; i += 1) {
    const start = performance.now();
    change(i);
    draw();
    times.push(performance.now() - start);
  }
  return times.slice(1).sort((a, b) => a - b)[Math.floor(count / 2)] ?? Number.NaN;
}

async function mounted(board: AppStore): Promise<{ handle: SheetHandle; gone(): void }> {
  const element = document.getElementById('sheet');
  if (!element) throw new Error('the page has a place for the sheet');
  const root = createRoot(element);
  const handle = await new Promise<SheetHandle>((resolve) => {
    const onMount = (one: SheetHandle) => {
      resolve(one);
      return undefined;
    };
    root.render(<SheetView board={board} sheet="floor" onMount={onMount} />);
  });
  return { handle, gone: () => root.unmount() };
}

globalThis.bench = async (segments) => {
  const job = manyLegs(segments);
  const board = createBoard(job);
  const { handle, gone } = await mounted(board);
  handle.fit();
  draw();
  const fitted = handle.viewport();
  const bare = bareScene(job, fitted);
  bare.layer.draw();
  const frames = segments > 4000 ? 5 : 15;
  const rows: Row[] = [];
  const add = (what: string, ours: (i: number) => void, theirs: (i: number) => void, solving = 0) =>
    rows.push({ segments, what, ours: frame(frames, ours), solving, bare: frame(frames, theirs) });

  const move = (i: number) => {
    bare.layer.position({ x: fitted.panX + i * 3, y: fitted.panY + i * 2 });
    bare.layer.batchDraw();
  };
  add('pan, all in view', (i) => handle.setViewport(panBy(fitted, i * 3, i * 2)), move);
  const close: Viewport = { scale: 100, panX: 40, panY: 660 };
  add('pan, close', (i) => handle.setViewport(panBy(close, -i * 3, i * 2)), move);
  handle.setViewport(fitted);
  draw();
  add(
    'recolour',
    (i) => board.set({ colourBy: i % 2 === 0 ? 'loss' : 'velocity' }),
    (i) => {
      for (const line of bare.lines) line.stroke(i % 2 === 0 ? '#335577' : '#886622');
      bare.layer.batchDraw();
    },
  );
  const grabbed = job.schemes[0]?.nodes[1]?.id ?? '';
  const { schemeId } = board.getState();
  let solving = 0;
  const drag = (i: number) => {
    const start = performance.now();
    board.preview((draft) => moveNodes(draft, schemeId, [grabbed], [0.01 * (i + 1), 0.02 * (i + 1), 0]));
    solving = performance.now() - start;
  };
  add('drag a turn', drag, (i) => {
    const [line] = bare.lines;
    line?.points([0, 0, i, i]);
    bare.layer.batchDraw();
  });
  rows[rows.length - 1] = { ...(rows[rows.length - 1] as Row), solving };
  board.preview(null);
  bare.gone();
  gone();
  return rows;
};
document.title = 'ready';
