import DxfParser from 'dxf-parser';
import * as pdfjs from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, it } from 'vitest';
import { drawDxf } from '../../../../src/files/underlay/dxf.ts';
import { MAX_BYTES, MAX_IMAGE, Refused, startScale } from '../../../../src/files/underlay/picture.ts';
import type { Canvas, Raster } from '../../../../src/files/underlay/raster.ts';
import { openSource, type SourceTools } from '../../../../src/files/underlay/source.ts';
import { cleanSvg } from '../../../../src/files/underlay/svg.ts';
import { pdfBytes, planPage, pngBytes } from '../../../support/pictures.ts';

/** A raster without pixels: a JPEG of it has a tenth of a byte a pixel, a PNG as many bytes as is said. */
function raster(size: readonly [number, number], pngSize = 1000): Raster {
  const canvas = (width: number, height: number): Canvas => ({
    element: {} as HTMLCanvasElement,
    width,
    height,
    encode: (type) =>
      Promise.resolve(
        new Blob([new Uint8Array(type === 'image/png' ? pngSize : Math.round(width * height * 0.1))], {
          type,
        }),
      ),
  });
  return {
    canvas,
    decode: () => Promise.resolve({ width: size[0], height: size[1], onto: canvas, close: () => {} }),
  };
}

function toolsOf(over: Partial<SourceTools> = {}): SourceTools {
  return {
    raster: raster([30, 20]),
    pdf: () => Promise.resolve({ pdfjs: pdfjs as unknown as typeof import('pdfjs-dist') }),
    drawer: {
      svg: async (text) => cleanSvg(text),
      dxf: async (text) => drawDxf(text, (words) => new DxfParser().parseSync(words)),
    },
    ...over,
  };
}

const file = (name: string, content: Uint8Array | string) => ({
  name,
  bytes: new Uint8Array(typeof content === 'string' ? new TextEncoder().encode(content) : content),
});

const picture = async (name: string, content: Uint8Array | string, over?: Partial<SourceTools>, page = 1) =>
  (await openSource(file(name, content), toolsOf(over))).picture(page);

const png = pngBytes(30, 20, () => 255);
const svg = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 30 20"><path d="M0 0h9"/></svg>';
const dxf = [
  0,
  'SECTION',
  2,
  'ENTITIES',
  0,
  'LINE',
  8,
  '0',
  10,
  0,
  20,
  0,
  11,
  6000,
  21,
  0,
  0,
  'ENDSEC',
  0,
  'EOF',
];
/** Start of a file, frame header of 300 × 200, a scanner's 200 dots per inch. */
const jpeg = Uint8Array.from([
  ...[0xff, 0xd8, 0xff, 0xe0, 0, 16, 0x4a, 0x46, 0x49, 0x46, 0, 1, 1, 1, 0, 200, 0, 200, 0, 0],
  ...[0xff, 0xc0, 0, 11, 8, 0, 200, 1, 44, 1, 1, 0x11, 0, 0xff, 0xd9],
]);

describe('a picture file', () => {
  it('in PNG is kept to the byte', async () => {
    const { image, size, measure, notes } = await picture('plan.png', png);
    expect(Buffer.from(image.slice('data:image/png;base64,'.length), 'base64').equals(png)).toBe(true);
    expect([size, measure, notes]).toEqual([[30, 20], { kind: 'unknown' }, []]);
  });

  it('that a scanner made knows what its pixels measure on paper', async () => {
    const scan = pngBytes(30, 20, () => 255, { dpi: 200 });
    expect((await picture('scan.png', scan)).measure).toEqual({
      kind: 'paper',
      scale: expect.closeTo(0.0254 / 200, 9),
    });
    const photo = await picture('scan.jpg', jpeg, { raster: raster([300, 200]) });
    expect(photo.measure).toEqual({ kind: 'paper', scale: expect.closeTo(0.0254 / 200, 12) });
  });

  it('at the resolution of a screen knows nothing of paper', async () => {
    expect(
      (
        await picture(
          'shot.png',
          pngBytes(30, 20, () => 255, { dpi: 96 }),
        )
      ).measure.kind,
    ).toBe('unknown');
  });

  it('that is too many bytes is compressed, keeps its scale, and says so', async () => {
    const heavy = Buffer.concat([pngBytes(30, 20, () => 9, { dpi: 200 }), Buffer.alloc(MAX_BYTES)]);
    const whole = { raster: raster([30, 20]) };
    const kept = await picture('heavy.png', heavy, whole);
    expect(kept.image.startsWith('data:image/jpeg;base64,')).toBe(true);
    expect(kept.image.length).toBeLessThanOrEqual(MAX_IMAGE);
    expect(kept.notes).toEqual([
      expect.stringMatching(/^The file has 9\.0 MB and 30 × 20 pixels; the job keeps .* as JPEG/),
    ]);
    expect(kept.measure).toEqual({ kind: 'paper', scale: expect.closeTo(0.0254 / 200, 9) });
  });

  it('of very many pixels becomes smaller, and its pixels measure more', async () => {
    const wide = pngHeader(12_000, 8000, 200);
    const { size, measure } = await picture('wide.png', wide, { raster: raster([12_000, 8000]) });
    expect(size[0] * size[1]).toBeLessThanOrEqual(48.1e6);
    expect(size[0] / size[1]).toBeCloseTo(1.5, 2);
    expect(measure.kind === 'paper' && measure.scale * size[0]).toBeCloseTo((12_000 * 0.0254) / 200, 3);
  });

  it('in SVG loses what acts, and says so', async () => {
    const acting = await picture('plan.svg', svg.replace('<path', '<script>1</script><path'));
    expect(Buffer.from(acting.image.split(',')[1] ?? '', 'base64').toString()).not.toContain('script');
    expect(acting.notes).toEqual([expect.stringMatching(/left out of the SVG \(1 place\)/)]);
  });

  it('in DXF has its real scale', async () => {
    const { measure, size, bare } = await picture('plan.dxf', dxf.join('\n'));
    expect(measure.kind === 'real' && (measure.scale * size[0]) / 1.02).toBeCloseTo(6, 9);
    expect([measure.kind === 'real' && measure.assumed, bare]).toEqual(['millimetres', true]);
  });

  it.each([
    ['is empty', 'a.png', '', /empty/],
    ['is of another kind', 'a.docx', 'PK\u0003\u0004', /a\.docx is none of PNG, JPEG, SVG, PDF and DXF/],
    ['is cut off', 'a.png', png.subarray(0, 12), /a\.png is damaged/],
    ['would fill the memory', 'bomb.png', pngHeader(60_000, 60_000), /60000 × 60000 pixels/],
    ['is no PDF', 'a.pdf', '%PDF-1.4 and nothing else', /damaged/],
  ])('that %s is refused in a sentence', async (_, name, content, why) => {
    const refused = picture(name, content);
    await expect(refused).rejects.toThrow(why);
    await expect(refused).rejects.toBeInstanceOf(Refused);
  });

  it('that the browser cannot show is refused', async () => {
    const blind: Raster = { ...raster([1, 1]), decode: () => Promise.reject(new Error('cannot')) };
    await expect(picture('a.png', png, { raster: blind })).rejects.toThrow(/a\.png is damaged/);
  });

  it('is told by its contents, not by its name', async () => {
    expect((await openSource(file('plan.pdf', png), toolsOf())).kind).toBe('png');
  });
});

describe('a PDF', () => {
  it('shows how many pages it has', async () => {
    const source = await openSource(
      file('plans.pdf', pdfBytes([planPage('Ground'), planPage('First')])),
      toolsOf(),
    );
    expect([source.kind, source.pages]).toEqual(['pdf', 2]);
    source.close();
  });

  it('that is dropped while it is being read is let go of', async () => {
    const gone = new AbortController();
    const opening = openSource(file('plans.pdf', pdfBytes([planPage('Ground')])), toolsOf(), gone.signal);
    gone.abort();
    await expect(opening).rejects.toMatchObject({ name: 'AbortError' });
  });
});

describe('the scale that a picture starts with', () => {
  const plain = { name: 'x', image: '', size: [4000, 2000] as const, bare: false, notes: [] };
  const start = (measure: Parameters<typeof startScale>[0]['measure'], ratio: number | null) =>
    startScale({ ...plain, measure }, ratio) * 4000;

  it('is that of the drawing where it says so', () => {
    expect(start({ kind: 'real', scale: 0.002, assumed: null }, 50)).toBeCloseTo(8, 12);
  });

  it('is the drawing scale times the paper', () => {
    expect(start({ kind: 'paper', scale: 0.0001 }, 48)).toBeCloseTo(0.4 * 48, 9);
  });

  it('is a guess of 8 m across where nothing is known', () => {
    expect([start({ kind: 'paper', scale: 0.0001 }, null), start({ kind: 'unknown' }, null)]).toEqual([8, 8]);
  });
});

/** The head of a PNG that claims a size. */
function pngHeader(width: number, height: number, dpi = 0): Buffer {
  const bytes = pngBytes(1, 1, () => 0, { dpi });
  bytes.writeUInt32BE(width, 16);
  bytes.writeUInt32BE(height, 20);
  return bytes;
}
