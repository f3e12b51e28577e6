import { beforeAll, describe, expect, it } from 'vitest';
import { jobSheetOf } from '../../../../src/files/job-sheet/content.ts';
import { jobSheetPdf, type PdfOptions, papers } from '../../../../src/files/job-sheet/pdf/job-sheet-pdf.ts';
import type { SectionId } from '../../../../src/files/job-sheet/types.ts';
import type { Job, Vec3 } from '../../../../src/graph/document.ts';
import { solveScheme } from '../../../../src/graph/solve.ts';
import { emptyJob } from '../../../../src/graph/templates.ts';
import { CFM, INCH_OF_WATER } from '../../../../src/units/index.ts';
import { type ReadPage, type ReadText, readPdf, sheetFonts } from '../../../support/pdf.ts';
import { exampleJob, runThrough } from '../../../support/route-job.ts';

const date = new Date('2026-03-02T12:00:00Z');

async function made(job: Job, options: Partial<PdfOptions> = {}, schemes = job.schemes.map(({ id }) => id)) {
  const sheets = await Promise.all(schemes.map((id) => jobSheetOf(job, id, { date })));
  return await jobSheetPdf(job, sheets, { paper: 'a4', fonts: sheetFonts, ...options });
}

const read = async (...of: Parameters<typeof made>) => (await readPdf(await made(...of))).pages;

const drawn = async (...[job, options, schemes]: Parameters<typeof made>) =>
  (await readPdf(await made(job, { ...options, parts: ['drawings'] }, schemes), { strokes: true })).pages;

/** Long enough for a machine that has other things to do, ms. */
const patience = 60_000;
const withoutAppendix: readonly SectionId[] = [
  'summary',
  'results',
  'drawings',
  'route',
  'charts',
  'findings',
  'parts',
  'signatures',
];

/** A run in steps through a cellar, with a turn after every metre or so. */
function manyLegs(count: number): Job {
  const points = Array.from({ length: count + 1 }, (_, i): Vec3 => {
    const [along, across] = [Math.floor((i + 1) / 2), Math.floor(i / 2)];
    return [along * 1.1, across * 0.9, 2.2];
  });
  return { ...runThrough(points), units: 'metric' };
}

function metric(points: readonly Vec3[]): Job {
  return { ...runThrough(points), units: 'metric' };
}

const drawings = (pages: readonly ReadPage[]) => pages.filter(({ width, height }) => width > height);

const saying = (pages: readonly ReadPage[], text: string) =>
  pages.find(({ texts }) => texts.some((each) => each.text === text));

/** The texts on the line of a text, from left to right. */
function lineOf(page: ReadPage | undefined, text: string): string[] {
  const own = page?.texts.find((each) => each.text === text);
  return (page?.texts ?? [])
    .filter(({ y }) => Math.abs(y - (own?.y ?? -1)) < 0.35)
    .sort((a, b) => a.x - b.x)
    .map((each) => each.text);
}

/** Pairs of texts that stand on one another. */
function onOneAnother({ texts }: ReadPage): string[] {
  const box = ({ x, y, width, size }: ReadText) => ({
    left: x + 0.1,
    right: x + width - 0.1,
    top: y - size * 0.68,
    bottom: y + size * 0.12,
  });
  return texts.flatMap((a, i) =>
    texts.slice(i + 1).flatMap((b) => {
      const [p, q] = [box(a), box(b)];
      const meet = p.left < q.right && q.left < p.right && p.top < q.bottom && q.top < p.bottom;
      return meet ? [`"${a.text}" and "${b.text}"`] : [];
    }),
  );
}

/** Texts that reach beyond the frame; the line below it is let through. */
function outside({ width, height, texts }: ReadPage): string[] {
  return texts
    .filter(({ x, y, width: wide }) => x < 10 || x + wide > width - 9.9 || y < 10 || y > height - 6)
    .map(({ text }) => text);
}

describe('the job sheet of the example', () => {
  const job = exampleJob();
  const [scheme] = job.schemes;
  let bytes = new Uint8Array();
  let pages: readonly ReadPage[] = [];
  beforeAll(async () => {
    bytes = Uint8Array.from(await made(job, {}, [scheme?.id ?? '']));
    pages = (await readPdf(bytes)).pages;
  }, patience);

  it('says of every speed what the air does, as it was solved', () => {
    const { speeds } = solveScheme(job, scheme?.id ?? '');
    expect(speeds).toHaveLength(4);
    for (const { name, outcome, ratedFlow } of speeds) {
      if (!outcome.solved) throw new Error(outcome.reason);
      const [, delivered, rated, , , total] = lineOf(pages[0], name).map(Number);
      expect(Math.abs((delivered ?? 0) * CFM - outcome.flow)).toBeLessThan(0.5 * CFM);
      expect(Math.abs((rated ?? 0) * CFM - ratedFlow)).toBeLessThan(0.5 * CFM);
      expect(Math.abs((total ?? 0) * INCH_OF_WATER - outcome.totalPressure)).toBeLessThan(
        0.005 * INCH_OF_WATER,
      );
    }
  });

  it('prints every cell of every table of its contents', async () => {
    const sheet = await jobSheetOf(job, scheme?.id ?? '', { date });
    const printed = pages
      .flatMap(({ texts }) => texts.map(({ text }) => text))
      .join(' ')
      .replace(/\s+/g, '');
    const cells = sheet.sections.flatMap(({ blocks }) =>
      blocks.flatMap((block) =>
        block.kind === 'table' ? block.rows.flatMap((row) => row.cells.map(({ text }) => text)) : [],
      ),
    );
    const missing = cells.filter((text) =>
      text.split(' ').some((word) => !printed.includes(word.replace(/\s+/g, ''))),
    );
    expect(cells.length).toBeGreaterThan(150);
    expect(missing).toEqual([]);
  });

  it('prints every caution, finding and formula heading', async () => {
    const sheet = await jobSheetOf(job, scheme?.id ?? '', { date });
    const printed = pages
      .flatMap(({ texts }) => texts.map(({ text }) => text))
      .join(' ')
      .replace(/\s+/g, '');
    const said = sheet.sections.flatMap(({ blocks }) =>
      blocks.flatMap((block) => {
        if (block.kind === 'cautions') return block.cautions;
        if (block.kind === 'findings') return block.findings.map(({ message }) => message);
        return block.kind === 'formula' ? [`${block.number}  ${block.title}`] : [];
      }),
    );
    expect(said.length).toBeGreaterThan(20);
    expect(said.filter((text) => !printed.includes(text.replace(/\s+/g, '')))).toEqual([]);
  });

  it('numbers its sheets and names job, scheme, day and file on each', () => {
    const short = /^[0-9a-f]{4}( [0-9a-f]{4}){3}$/;
    pages.forEach(({ texts }, i) => {
      const said = texts.map(({ text }) => text);
      expect(said).toContain(`${i + 1} of ${pages.length}`);
      expect(said).toContain(job.title);
      expect(said).toContain('Out the north wall');
      expect(said.some((text) => short.test(text))).toBe(true);
    });
  });

  it('draws floor, two sections and the view from an angle, each with its scale', () => {
    const said = drawings(pages).map(({ texts }) => texts.map(({ text }) => text));
    expect(said).toHaveLength(4);
    expect(said.filter((texts) => texts.some((text) => /″ = 1′-0″$/.test(text)))).toHaveLength(3);
    expect(said[3]).toContain('Not to scale');
  });

  it('letters its findings alike on the drawings and in the text', () => {
    const marked = drawings(pages).map(({ texts }) => texts.filter(({ text }) => text === 'A').length);
    expect(Math.min(...marked)).toBeGreaterThanOrEqual(2);
    const text = pages.find(({ texts }) => texts.some((each) => each.text === 'Findings and code checks'));
    expect(lineOf(text, 'Danger')).toContain('A');
  });

  it('embeds every font that it uses', () => {
    const file = new TextDecoder('latin1').decode(bytes);
    const fonts = file.match(/\/Subtype \/(?:Type1|TrueType|CIDFontType\d)/g) ?? [];
    const embedded = file.match(/\/FontFile2 \d+ 0 R/g) ?? [];
    expect(fonts).toEqual(Array(3).fill('/Subtype /CIDFontType2'));
    expect(embedded).toHaveLength(3);
  });

  it('is the same file for the same job and day', async () => {
    const again = await made(job, {}, [scheme?.id ?? '']);
    expect(Buffer.from(again).equals(bytes)).toBe(true);
  });
});

describe('a drawing on paper', () => {
  it('shows a leg of 3 m at 1:50 as 60 mm', async () => {
    const job = metric([
      [0, 0, 2],
      [3, 0, 2],
      [8, 0, 2],
    ]);
    const floor = saying(await drawn(job), '1:50');
    const level = floor?.strokes.filter(({ kind, from, to }) => kind === 'line' && from[1] === to[1]) ?? [];
    const walls = level.filter(({ width, dashed }) => !dashed && width > 0.35);
    const lengths = walls.map(({ from, to }) => Math.abs(to[0] - from[0]));
    expect(lengths.filter((length) => Math.abs(length - 60) < 0.001).length).toBeGreaterThanOrEqual(2);
    expect(lengths.filter((length) => Math.abs(length - 100) < 0.001).length).toBeGreaterThanOrEqual(2);
  });

  it.each([
    ['a4', 'metric'],
    ['a4', 'imperial'],
    ['letter', 'metric'],
    ['letter', 'imperial'],
  ] as const)('has a scale bar as long as it says, on %s in %s units', async (paper, units) => {
    const job: Job = { ...exampleJob(), units };
    const pages = await drawn(job, { paper }, [job.schemes[0]?.id ?? '']);
    const floor = drawings(pages)[0];
    const scale = floor?.texts.map(({ text }) => ratioOf(text)).find((ratio) => ratio !== null) ?? Number.NaN;
    const end = floor?.texts.find(({ text, size }) => /^[\d.]+ (m|ft)$/.test(text) && size < 2.1);
    const start = floor?.texts.find(({ text, y }) => text === '0' && y === end?.y);
    const said = Number.parseFloat(end?.text ?? '') * (units === 'metric' ? 1 : 0.3048);
    const bar = floor?.strokes.filter(
      ({ from, to }) =>
        from[1] === to[1] &&
        Math.abs(from[1] - (end?.y ?? 0) + 2.6) < 1.6 &&
        from[0] >= (start?.x ?? 0) - 0.01,
    );
    const right = Math.max(...(bar ?? []).flatMap(({ from, to }) => [from[0], to[0]]));
    const length = right - (start?.x ?? 0);
    expect(length).toBeCloseTo((said * 1000) / scale, 2);
  });
});

/** n of 1:n that a text says, or null. */
function ratioOf(text: string): number | null {
  const plain = /^1:(\d+)$/.exec(text);
  if (plain) return Number(plain[1]);
  const inch = /^(?:(\d+) ?)?(?:(\d+)\/(\d+))?″ = 1′-0″$/.exec(text);
  if (!inch) return null;
  const [, whole, over, under] = inch;
  return 12 / (Number(whole ?? 0) + (over ? Number(over) / Number(under) : 0));
}

const long =
  'A kitchen whose title goes on for longer than any title block has room for, with a word that is Unbreakablyunreasonablylongwithoutanyspaceinit';

describe.each([
  ['the example, A4', exampleJob(), 'a4', undefined],
  ['the example, Letter', exampleJob(), 'letter', withoutAppendix],
  ['the example in metric units', { ...exampleJob(), units: 'metric' } as Job, 'a4', withoutAppendix],
  ['an empty job', emptyJob('metric'), 'a4', undefined],
  ['an empty job, Letter', emptyJob('imperial'), 'letter', undefined],
  ['a job with many legs', manyLegs(40), 'a4', withoutAppendix],
  ['a job with a long title', { ...exampleJob(), title: long }, 'letter', ['summary', 'drawings']],
] as const)('the pages of %s', (_, job, paper, parts) => {
  let pages: readonly ReadPage[] = [];
  beforeAll(async () => {
    pages = await read(job, { paper, ...(parts && { parts }) });
  }, patience);

  it('have the size of the paper, drawings across', () => {
    const { width, height } = papers[paper];
    for (const page of pages) {
      const sides = [Math.min(page.width, page.height), Math.max(page.width, page.height)];
      expect(sides[0]).toBeCloseTo(width, 2);
      expect(sides[1]).toBeCloseTo(height, 2);
    }
  });

  it('have no text on another', () => {
    expect(pages.flatMap((page, i) => onOneAnother(page).map((pair) => `${i + 1}: ${pair}`))).toEqual([]);
  });

  it('have no text beyond their frame', () => {
    expect(pages.flatMap((page, i) => outside(page).map((text) => `${i + 1}: ${text}`))).toEqual([]);
  });
});

describe('making a job sheet', () => {
  it('stops when it is called off', async () => {
    const control = new AbortController();
    const onProgress = () => control.abort(new DOMException('enough', 'AbortError'));
    await expect(made(exampleJob(), { signal: control.signal, onProgress })).rejects.toThrow('enough');
  });

  it('tells how far it is, up to the whole', async () => {
    const told: number[] = [];
    await made(exampleJob(), { parts: withoutAppendix, onProgress: (done) => told.push(done) });
    expect(told.at(-1)).toBe(1);
    expect([...told].sort((a, b) => a - b)).toEqual(told);
  });

  it('leaves out what was not asked for', async () => {
    const pages = await read(exampleJob(), { parts: ['summary', 'findings'] });
    expect(drawings(pages)).toEqual([]);
    expect(saying(pages, 'Parts list')).toBeUndefined();
    expect(saying(pages, 'Findings and code checks')).toBeDefined();
  });
});

it('names the letters that its font lacks on every scheme’s first page, and keeps them for who copies the text', async () => {
  const job = { ...exampleJob(), title: '厨房 Kitchen' };
  const [page] = await read(job, { parts: ['summary'] }, ['wall']);
  const texts = page?.texts.map(({ text }) => text) ?? [];
  expect(texts.join(' ')).toContain(
    '2 letters of these texts are not in the sheet’s font and stand as □: U+53A8, U+623F.',
  );
  expect(texts).toContain('厨房 Kitchen');
});

it('says nothing of letters where its font has them all', async () => {
  const [page] = await read({ ...exampleJob(), title: 'Κουζίνα, кухня, bếp' }, { parts: ['summary'] }, [
    'wall',
  ]);
  expect(page?.texts.map(({ text }) => text).join(' ')).not.toContain('not in the sheet’s font');
});
