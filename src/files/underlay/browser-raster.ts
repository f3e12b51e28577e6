import { words } from '../../words/index.ts';
import type { Canvas, Decoded, Raster } from './raster.ts';

const says = words.underlayFiles.raster;

/** Pictures by means of the browser. */
export const browserRaster: Raster = {
  canvas: newCanvas,
  async decode(blob) {
    return blob.type === 'image/svg+xml' ? await decodeSvg(blob) : await decodePixels(blob);
  },
};

function newCanvas(width: number, height: number): Canvas {
  const element = document.createElement('canvas');
  element.width = width;
  element.height = height;
  return {
    element,
    width,
    height,
    encode: (type, quality) =>
      new Promise((resolve, reject) => {
        const done = (blob: Blob | null) => (blob ? resolve(blob) : reject(new Error(says.noMemory)));
        element.toBlob(done, type, quality);
      }),
  };
}

async function decodePixels(blob: Blob): Promise<Decoded> {
  const bitmap = await createImageBitmap(blob);
  return decoded(bitmap, bitmap.width, bitmap.height, () => bitmap.close());
}

/** Browsers decode SVG only in an image of the page. */
async function decodeSvg(blob: Blob): Promise<Decoded> {
  const address = URL.createObjectURL(blob);
  const image = new Image();
  image.src = address;
  try {
    await image.decode();
  } finally {
    URL.revokeObjectURL(address);
  }
  return decoded(image, image.naturalWidth, image.naturalHeight, () => {});
}

function decoded(source: CanvasImageSource, width: number, height: number, close: () => void): Decoded {
  return {
    width,
    height,
    close,
    onto(across, down, white) {
      const canvas = newCanvas(across, down);
      const pen = canvas.element.getContext('2d');
      if (!pen) throw new Error(says.noSurface);
      pen.imageSmoothingQuality = 'high';
      if (white) {
        pen.fillStyle = '#ffffff';
        pen.fillRect(0, 0, across, down);
      }
      pen.drawImage(source, 0, 0, across, down);
      return canvas;
    },
  };
}
