import { describe, expect, it } from 'vitest';
import { colour } from '../../../../src/files/pdf/colour.ts';
import { type PdfAbout, pdfFile } from '../../../../src/files/pdf/document.ts';
import { createFont } from '../../../../src/files/pdf/font.ts';
import { readFont } from '../../../../src/files/pdf/font-file.ts';
import { createPage, type Page } from '../../../../src/files/pdf/page.ts';
import { type ReadStroke, readPdf, sheetFonts } from '../../../support/pdf.ts';

const ink = colour('#000000');
const about: PdfAbout = {
  title: 'Kitchen in Łódź',
  subject: 'Job sheet',
  creator: 'Gentlebend',
  language: 'en',
  date: new Date('2026-03-02T10:00:00Z'),
  id: '0123456789abcdef0123456789abcdef',
};

async function drawn(draw: (page: Page, font: ReturnType<typeof createFont>) => void) {
  const font = createFont('F1', readFont(sheetFonts.regular));
  const page = createPage(210, 297);
  draw(page, font);
  const bytes = await pdfFile([page], [font], [{ title: 'Duct – ø', page: 0 }], about);
  return { bytes, ...(await readPdf(bytes, { strokes: true })) };
}

/** A point of a curve. */
function on({ from, pull, to }: ReadStroke, t: number): [number, number] {
  const [a, b] = pull ?? [from, to];
  const at = (i: 0 | 1) =>
    (1 - t) ** 3 * from[i] + 3 * t * (1 - t) ** 2 * a[i] + 3 * t * t * (1 - t) * b[i] + t ** 3 * to[i];
  return [at(0), at(1)];
}

describe('a PDF file', () => {
  it('gives its text back, letters without a shape in the font among it', async () => {
    const text = 'Δp = ζ·ρ·v²/2 ≤ 8′ 3 1/2″, Küche 厨房';
    const { pages } = await drawn((page, font) =>
      page.text({ x: 20, y: 30 }, text, { font, size: 10, colour: ink }),
    );
    expect(pages[0]?.texts.map((each) => each.text)).toEqual([text]);
  });

  it('puts a text where it was asked for, to a thousandth of a millimetre', async () => {
    const { pages } = await drawn((page, font) => {
      page.text({ x: 20, y: 30 }, 'left', { font, size: 10, colour: ink });
      page.text({ x: 190, y: 40 }, 'right', { font, size: 10, colour: ink }, 'right');
    });
    const [left, right] = pages[0]?.texts ?? [];
    expect(left?.x).toBeCloseTo(20, 3);
    expect(left?.y).toBeCloseTo(30, 3);
    expect((right?.x ?? 0) + (right?.width ?? 0)).toBeCloseTo(190, 1);
  });

  it('draws an arc truer than a hundredth of a micrometre a millimetre of radius', async () => {
    const { pages } = await drawn((page) =>
      page.draw({ line: { width: 0.2, colour: ink } }, (path) => path.arc({ x: 105, y: 150 }, 90, 0.3, 5.1)),
    );
    const curves = pages[0]?.strokes.filter(({ kind }) => kind === 'curve') ?? [];
    const off = curves.flatMap((curve) =>
      [0.1, 0.25, 0.5, 0.75].map((t) => {
        const [x, y] = on(curve, t);
        return Math.abs(Math.hypot(x - 105, y - 150) - 90);
      }),
    );
    expect(off.length).toBeGreaterThan(30);
    expect(Math.max(...off)).toBeLessThan(1e-3);
  });

  it('is the same to the last byte when it is made again', async () => {
    const make = () =>
      drawn((page, font) => page.text({ x: 9, y: 9 }, 'once', { font, size: 9, colour: ink }));
    expect((await make()).bytes).toEqual((await make()).bytes);
  });

  it('tells title, maker, day and contents to its reader', async () => {
    const { info, outline } = await drawn(() => {});
    expect(info).toMatchObject({
      Title: 'Kitchen in Łódź',
      Creator: 'Gentlebend',
      CreationDate: 'D:20260302100000Z',
    });
    expect(outline).toEqual(['Duct – ø']);
  });

  it('leaves out a font that no text is set in', async () => {
    const { bytes } = await drawn(() => {});
    expect(new TextDecoder('latin1').decode(bytes)).not.toContain('FontFile2');
  });
});
