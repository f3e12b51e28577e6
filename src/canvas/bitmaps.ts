/** Pixels, or lines, that a pen can draw from. */
export interface Bitmap {
  readonly source: CanvasImageSource;
  readonly width: number;
  readonly height: number;
  close(): void;
}

export interface DecodedImage {
  readonly pixels: Bitmap;
  /** For a picture of few lines: itself, to be drawn sharp where it is large. */
  readonly lines: Bitmap | null;
}

/** What keeping pictures needs of a browser. */
export interface BitmapMaker {
  decode(image: string): Promise<DecodedImage>;
  halve(bitmap: Bitmap): Promise<Bitmap>;
  invert(bitmap: Bitmap): Bitmap;
}

/** Characters of a picture of lines that are drawn anew at every frame without being felt. */
const FEW_LINES = 400_000;

export const browserBitmaps: BitmapMaker = {
  async decode(image) {
    if (image.startsWith('data:image/svg+xml')) return await decodeLines(image);
    const file = await fetch(image);
    return { pixels: bitmapOf(await createImageBitmap(await file.blob())), lines: null };
  },
  async halve({ source, width, height }) {
    const half = await createImageBitmap(source as ImageBitmap, {
      resizeWidth: Math.ceil(width / 2),
      resizeHeight: Math.ceil(height / 2),
      resizeQuality: 'medium',
    });
    return bitmapOf(half);
  },
  invert({ source, width, height }) {
    const { canvas, pen } = surface(width, height);
    pen.drawImage(source, 0, 0);
    pen.globalCompositeOperation = 'difference';
    pen.fillStyle = '#ffffff';
    pen.fillRect(0, 0, width, height);
    pen.globalCompositeOperation = 'destination-in';
    pen.drawImage(source, 0, 0);
    return { source: canvas, width, height, close: () => {} };
  },
};

async function decodeLines(image: string): Promise<DecodedImage> {
  const element = new Image();
  element.src = image;
  await element.decode();
  const { naturalWidth: width, naturalHeight: height } = element;
  const { canvas, pen } = surface(width, height);
  pen.drawImage(element, 0, 0, width, height);
  return {
    pixels: bitmapOf(await createImageBitmap(canvas)),
    lines: image.length <= FEW_LINES ? { source: element, width, height, close: () => {} } : null,
  };
}

function bitmapOf(bitmap: ImageBitmap): Bitmap {
  return { source: bitmap, width: bitmap.width, height: bitmap.height, close: () => bitmap.close() };
}

function surface(width: number, height: number) {
  const canvas = document.createElement('canvas');
  canvas.width = width;
  canvas.height = height;
  const pen = canvas.getContext('2d');
  if (!pen) throw new Error('the browser gives no surface to paint on');
  return { canvas, pen };
}
