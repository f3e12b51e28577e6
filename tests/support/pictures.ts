import { crc32, deflateSync } from 'node:zlib';

/** A grey PNG; `grey` gives 0 to 255 by column and row. */
export function pngBytes(
  width: number,
  height: number,
  grey: (x: number, y: number) => number,
  more: { readonly dpi?: number } = {},
): Buffer {
  const rows = Buffer.alloc((width + 1) * height);
  for (let y = 0; y < height; y++) for (let x = 0; x < width; x++) rows[y * (width + 1) + 1 + x] = grey(x, y);
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([8, 0, 0, 0, 0], 8);
  const density = Buffer.alloc(9);
  const perMetre = Math.round((more.dpi ?? 0) / 0.0254);
  density.writeUInt32BE(perMetre, 0);
  density.writeUInt32BE(perMetre, 4);
  density[8] = 1;
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', header),
    ...(more.dpi ? [chunk('pHYs', density)] : []),
    chunk('IDAT', deflateSync(rows, { level: 1 })),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

function chunk(type: string, data: Buffer): Buffer {
  const named = Buffer.concat([Buffer.from(type, 'latin1'), data]);
  const around = Buffer.alloc(8);
  around.writeUInt32BE(data.length, 0);
  around.writeUInt32BE(crc32(named), 4);
  return Buffer.concat([around.subarray(0, 4), named, around.subarray(4)]);
}

/** A PDF of pages 792 by 612 points (11 by 8.5 in), each drawn by operators of the page's language. */
export function pdfBytes(pages: readonly string[]): Buffer {
  const kids = pages.map((_, i) => `${4 + 2 * i} 0 R`).join(' ');
  const objects = [
    '<< /Type /Catalog /Pages 2 0 R >>',
    `<< /Type /Pages /Kids [${kids}] /Count ${pages.length} >>`,
    '<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica >>',
    ...pages.flatMap((operators, i) => [
      `<< /Type /Page /Parent 2 0 R /MediaBox [0 0 792 612] /Contents ${5 + 2 * i} 0 R /Resources << /Font << /F1 3 0 R >> >> >>`,
      `<< /Length ${operators.length} >>\nstream\n${operators}\nendstream`,
    ]),
  ];
  let text = '%PDF-1.4\n';
  const places = objects.map((body, i) => {
    const at = text.length;
    text += `${i + 1} 0 obj\n${body}\nendobj\n`;
    return at;
  });
  const table = places.map((at) => `${String(at).padStart(10, '0')} 00000 n \n`).join('');
  text += `xref\n0 ${objects.length + 1}\n0000000000 65535 f \n${table}`;
  const start = text.lastIndexOf('xref');
  text += `trailer\n<< /Size ${objects.length + 1} /Root 1 0 R >>\nstartxref\n${start}\n%%EOF\n`;
  return Buffer.from(text, 'latin1');
}

/** A plan as a PDF page draws it: walls 720 by 540 points around a word. */
export function planPage(word: string): string {
  return `2 w 36 36 720 540 re S 300 36 m 300 400 l S BT /F1 36 Tf 340 300 Td (${word}) Tj ET`;
}
