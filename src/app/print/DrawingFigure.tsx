import { useLayoutEffect, useMemo, useRef } from 'react';
import { createMeasure } from '../../canvas/text-width.ts';
import { palettes } from '../../drawing/palette.ts';
import { type Board, boardOf, footerLine, scaleThatFits } from '../../files/drawing-out/layout.ts';
import { svgFile } from '../../files/drawing-out/svg.ts';
import type { DrawingBlock } from '../../files/job-sheet/types.ts';
import { useBoard } from '../context.ts';

/** Cut off round a drawing that was made for a file of its own, mm. */
const trim = 6;
/** Lines of the footer that stand on the sheet already: the job's name and what the drawing is for. */
const saidElsewhere = 2;

/** Room for a drawing before it is trimmed, so that a page of either paper has room for two, mm. */
const frame = { width: 184 + 2 * trim, height: 122 + 2 * trim + saidElsewhere * footerLine };
const tallFrame = { ...frame, height: frame.height + 20 };

const widths = createMeasure();

/** A sheet drawn to a usual scale: what it measures on paper is so many times smaller than life. */
export function DrawingFigure({ block: { drawing, description } }: { block: DrawingBlock }) {
  const job = useBoard((state) => state.job);
  const solution = useBoard((state) => state.solution);
  const place = useRef<HTMLElement>(null);
  const svg = useMemo(() => {
    const pen = document.createElement('canvas').getContext('2d');
    const speed = solution.speeds.findLast(({ outcome }) => outcome.solved);
    const query = {
      job,
      route: solution.route,
      ...(pen ? { measure: widths.with(pen) } : {}),
      ...(speed ? { speed } : {}),
    };
    const room = drawing === 'isometric' ? tallFrame : frame;
    const board = withScaleAlone(boardOf({ ...query, scale: scaleThatFits(query, drawing, room) }, drawing));
    return svgFile({ board, palette: palettes.print, paper: false, title: description, description });
  }, [job, solution, drawing, description]);
  useLayoutEffect(() => {
    place.current?.replaceChildren(inThePage(svg, description));
  }, [svg, description]);
  return <figure ref={place} className="paper-drawing" data-drawing={drawing} />;
}

/** With the scale alone in its footer. */
function withScaleAlone(board: Board): Board {
  const { footer } = board;
  const less = saidElsewhere * footerLine;
  return {
    ...board,
    height: board.height - less,
    footer: { ...footer, lines: footer.lines.slice(1, 2), bar: { ...footer.bar, y: footer.bar.y - less } },
  };
}

/**
 * A drawing made for a file of its own as a part of the page: trimmed at the same scale, without names and styles
 * that would reach beyond it.
 */
function inThePage(svg: string, label: string): Element {
  const { documentElement } = new DOMParser().parseFromString(svg, 'image/svg+xml');
  const drawing = document.importNode(documentElement, true);
  for (const part of drawing.querySelectorAll('style, title, desc')) part.remove();
  for (const part of drawing.querySelectorAll('[id]')) part.removeAttribute('id');
  const [, , width = 0, height = 0] = (drawing.getAttribute('viewBox') ?? '').split(' ').map(Number);
  const mm = Number.parseFloat(drawing.getAttribute('width') ?? '') / width;
  const cut = trim / mm;
  drawing.setAttribute('viewBox', `${cut} ${cut} ${width - 2 * cut} ${height - 2 * cut}`);
  drawing.setAttribute('width', `${width * mm - 2 * trim}mm`);
  drawing.setAttribute('height', `${height * mm - 2 * trim}mm`);
  drawing.removeAttribute('aria-labelledby');
  drawing.setAttribute('aria-label', label);
  return drawing;
}
