import { PNG } from 'pngjs';
import { describe, expect, it } from 'vitest';
import { mostPixels, pictureSize, withResolution } from '../../../../src/files/drawing-out/png.ts';

const picture = () => {
  const made = new PNG({ width: 3, height: 2 });
  made.data.fill(77);
  return new Uint8Array(PNG.sync.write(made));
};

/** Names and contents of a PNG's chunks. */
function chunks(png: Uint8Array) {
  const view = new DataView(png.buffer, png.byteOffset, png.byteLength);
  const found: { name: string; data: DataView }[] = [];
  for (let at = 8; at < png.length; at += 12 + view.getUint32(at)) {
    const name = String.fromCharCode(...png.subarray(at + 4, at + 8));
    found.push({ name, data: new DataView(png.buffer, png.byteOffset + at + 8, view.getUint32(at)) });
  }
  return found;
}

describe('a PNG with its resolution', () => {
  it('says how many pixels a metre it has, before its pixels', () => {
    const made = chunks(withResolution(picture(), 300));
    expect(made.map(({ name }) => name).slice(0, 2)).toEqual(['IHDR', 'pHYs']);
    const { data } = made[1] ?? {};
    expect([data?.getUint32(0), data?.getUint32(4), data?.getUint8(8)]).toEqual([11811, 11811, 1]);
  });

  it('is read by a decoder that checks every chunk, with the pixels that it had', () => {
    const read = PNG.sync.read(Buffer.from(withResolution(picture(), 300)), { checkCRC: true });
    expect([read.width, read.height]).toEqual([3, 2]);
    expect([...read.data]).toEqual(Array(24).fill(77));
  });

  it('says one resolution, the last that it was given', () => {
    const made = chunks(withResolution(withResolution(picture(), 300), 150));
    expect(made.filter(({ name }) => name === 'pHYs').map(({ data }) => data.getUint32(0))).toEqual([5906]);
  });

  it('is not made of what is no PNG', () => {
    expect(() =>
      withResolution(new TextEncoder().encode('<svg xmlns="…">, which is longer than a header'), 300),
    ).toThrow(RangeError);
  });
});

describe('the size of a picture', () => {
  it('is the paper at its dots an inch', () => {
    expect(pictureSize({ width: 254, height: 127 }, 300)).toMatchObject({
      width: 3000,
      height: 1500,
      tooLarge: false,
    });
  });

  it('is refused where no canvas holds it, with the finest resolution that one does', () => {
    const paper = { width: 1000, height: 700 };
    const { tooLarge, finest } = pictureSize(paper, 600);
    expect(tooLarge).toBe(true);
    expect(pictureSize(paper, finest).tooLarge).toBe(false);
    expect(pictureSize(paper, finest + 20).tooLarge).toBe(true);
  });

  it('is held to a side as well as to an area', () => {
    const strip = pictureSize({ width: 2000, height: 10 }, 300);
    expect(strip.width).toBeGreaterThan(mostPixels.side);
    expect(strip.tooLarge).toBe(true);
  });
});
