import type { UnitSystem } from '../../../graph/document.ts';
import { FOOT, formatTrimmed } from '../../../units/index.ts';
import type { At, Page } from '../../pdf/page.ts';
import { inks, pen, sizes, style, type Type } from './look.ts';
import { drawRect } from './shapes.ts';

const units = {
  metric: { metres: 1, name: 'm' },
  imperial: { metres: FOOT, name: 'ft' },
} as const;

/** Round lengths with the number of parts that they are divided into. */
const lengths = [
  [0.2, 4],
  [0.5, 5],
  [1, 4],
  [2, 4],
  [4, 4],
  [5, 5],
  [10, 5],
  [20, 4],
  [50, 5],
  [100, 4],
  [200, 4],
  [500, 5],
] as const;

/** Height of a scale bar with its figures, mm. */
export const scaleBarHeight = 6;

/** Draws the longest round scale bar that is no longer than `width` mm; `at` is its upper left corner. */
export function drawScaleBar(
  page: Page,
  at: At,
  width: number,
  scale: number,
  system: UnitSystem,
  type: Type,
): void {
  const { metres, name } = units[system];
  const paper = (length: number) => (length * metres * 1000) / scale;
  const room = width - 8;
  const [length, parts] = [...lengths].reverse().find(([each]) => paper(each) <= room) ?? lengths[0];
  const step = paper(length) / parts;
  const set = style(type, sizes.tiny, 'regular');
  const height = 1.4;
  for (let i = 0; i < parts; i += 1)
    drawRect(
      page,
      { x: at.x + i * step, y: at.y, width: step, height },
      { fill: i % 2 === 0 ? inks.ink : inks.paper, line: pen('fine') },
    );
  const figure = (i: number) => formatTrimmed((length * i) / parts);
  const base = at.y + height + 2.6;
  const every = step < 7 ? parts : 1;
  for (let i = 0; i <= parts; i += every) {
    const last = i === parts;
    const text = last ? `${figure(i)} ${name}` : figure(i);
    const shift = last ? set.font.width(figure(i), set.size, true) / 2 : 0;
    if (i === 0) page.text({ x: at.x, y: base }, text, set);
    else if (last) page.text({ x: at.x + i * step - shift, y: base }, text, set);
    else page.text({ x: at.x + i * step, y: base }, text, set, 'middle');
  }
}
