import { words } from '../../../words/index.ts';
import type { At, Page } from '../../pdf/page.ts';
import type { TitleBlock } from '../types.ts';
import { type Area, inks, pen, sizes, style, type Type } from './look.ts';
import { drawLine, drawRect } from './shapes.ts';
import { clamped, drawLines, lineHeight } from './text.ts';

/** Paper left free around the frame, mm. */
export const margin = 10;
/** Height of the title block, mm. */
export const blockHeight = 20;

/** What the title block of one page says. */
export interface PageTitle {
  readonly title: TitleBlock;
  /** What is on the page: its drawing, or the sections that stand on it. */
  readonly contents: readonly string[];
  /** Null where the page has no drawing. */
  readonly scale: string | null;
}

/** What is inside the frame and above the title block. */
export function inside({ width, height }: Pick<Page, 'width' | 'height'>): Area {
  return {
    x: margin,
    y: margin,
    width: width - 2 * margin,
    height: height - 2 * margin - blockHeight,
  };
}

/** Draws the frame of a page with its title block, and the line at its foot. */
export function drawTitleBlock(page: Page, about: PageTitle, number: number, of: number, type: Type): void {
  const frame = { x: margin, y: margin, width: page.width - 2 * margin, height: page.height - 2 * margin };
  const top = frame.y + frame.height - blockHeight;
  const right = frame.x + frame.width;
  const { title, scale } = about;
  const content = about.contents.join(', ');
  const say = words.paper.block;

  const numberWidth = 24;
  const gridWidth = Math.min(118, frame.width * 0.52);
  const [gridX, numberX] = [right - numberWidth - gridWidth, right - numberWidth];
  const middle = top + blockHeight / 2;
  const thin = { line: pen('edge') };
  drawLine(page, thin, { x: gridX, y: top }, { x: gridX, y: top + blockHeight });
  drawLine(page, thin, { x: numberX, y: top }, { x: numberX, y: top + blockHeight });
  drawLine(page, thin, { x: gridX, y: middle }, { x: numberX, y: middle });

  const upper =
    scale === null
      ? [[say.section, content, 1]]
      : [
          [say.sheet, content, 0.56],
          [say.scale, scale, 0.44],
        ];
  const lower = [
    [say.date, title.date, 0.32],
    [say.units, words.jobSheet.title[title.units], 0.2],
    [say.file, title.fingerprint.short, 0.48],
  ];
  for (const [row, y] of [
    [upper, top],
    [lower, middle],
  ] as const) {
    let x = gridX;
    row.forEach(([label, text, share], i) => {
      const width = gridWidth * Number(share);
      if (i > 0) drawLine(page, thin, { x, y }, { x, y: y + blockHeight / 2 });
      drawCell(page, { x, y, width, height: blockHeight / 2 }, String(label), String(text), type);
      x += width;
    });
  }
  drawNumber(page, { x: numberX, y: top, width: numberWidth, height: blockHeight }, number, of, type);
  drawJob(page, { x: frame.x, y: top, width: gridX - frame.x, height: blockHeight }, title, type);

  drawLine(page, { line: pen('frame') }, { x: frame.x, y: top }, { x: right, y: top });
  drawRect(page, frame, { line: pen('frame') });
  const foot = style(type, sizes.tiny, 'regular', inks.muted, true);
  const [footLine = ''] = clamped(title.footer, frame.width - 40, foot, 1);
  page.text({ x: frame.x, y: page.height - margin + 3.6 }, footLine, foot);
  page.text(
    { x: right, y: page.height - margin + 3.6 },
    words.jobSheet.title.version(title.program, title.version),
    foot,
    'right',
  );
}

function drawCell(page: Page, area: Area, label: string, text: string, type: Type): void {
  const set = fittingStyle(text, area.width - 4, type);
  const [line = ''] = clamped(text, area.width - 4, set, 1);
  page.text({ x: area.x + 2, y: area.y + 3.2 }, label, style(type, sizes.tiny, 'regular', inks.muted, true));
  page.text({ x: area.x + 2, y: area.y + 7.7 }, line, set);
}

/** The largest style of a few at which a text is one line of a width. */
function fittingStyle(text: string, width: number, type: Type) {
  const all = [sizes.body, sizes.table, sizes.small, 6.2].map((size) => style(type, size));
  const fits = all.find((set) => set.font.width(text, set.size, set.tabular) <= width);
  return fits ?? style(type, 6.2);
}

function drawNumber(page: Page, area: Area, number: number, of: number, type: Type): void {
  const { block } = words.paper;
  const at = { x: area.x + area.width / 2, y: area.y };
  page.text(
    { x: at.x, y: at.y + 5 },
    block.page,
    style(type, sizes.tiny, 'regular', inks.muted, true),
    'middle',
  );
  const text = block.pageOf(number, of);
  const large = [13, 11, 9, 7].map((size) => style(type, size, 'semibold'));
  const set = large.find((each) => each.font.width(text, each.size, true) < area.width - 3) ?? large[3];
  if (set) page.text({ x: at.x, y: at.y + 13.2 }, text, set, 'middle');
}

function drawJob(page: Page, area: Area, title: TitleBlock, type: Type): void {
  drawSign(page, { x: area.x + 4, y: area.y + area.height / 2 });
  const [x, width] = [area.x + 15, area.width - 18];
  const large = style(type, 11.5, 'semibold', inks.ink, true);
  const small = style(type, 9, 'semibold', inks.ink, true);
  const oneLine = clamped(title.job, width, large, 2).length === 1;
  const head = oneLine ? large : small;
  const lines = clamped(title.job, width, head, 2);
  const sub = style(type, sizes.body, 'regular', inks.muted, true);
  const under = clamped(title.scheme, width, sub, 1);
  const height = lines.length * lineHeight(head) + lineHeight(sub);
  const y = area.y + (area.height - height) / 2;
  const used = drawLines(page, { x, y }, lines, head);
  drawLines(page, { x, y: y + used }, under, sub);
}

/** The program's sign: a gentle bend. */
function drawSign(page: Page, at: At): void {
  const line = { width: 0.5, colour: inks.accent, cap: 'round' } as const;
  page.draw({ line }, (path) => {
    path.move({ x: at.x, y: at.y + 4 });
    path.arc({ x: at.x + 6, y: at.y + 1.6 }, 6, Math.PI, Math.PI / 2, true);
    path.line({ x: at.x + 7.6, y: at.y - 4.4 });
    path.move({ x: at.x + 4.2, y: at.y + 4 });
    path.arc({ x: at.x + 6, y: at.y + 1.6 }, 1.8, Math.PI, Math.PI / 2, true);
    path.line({ x: at.x + 7.6, y: at.y - 0.2 });
  });
}
