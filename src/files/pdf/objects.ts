import { zlibSync } from 'fflate';
import { joined } from './font-subset.ts';

/** The number of an object in a PDF file. */
export type Ref = number;

/** The objects of a PDF file, and the file made of them. The same objects give the same bytes. */
export interface PdfObjects {
  /** A number for an object that is set later. */
  reserve(): Ref;
  set(ref: Ref, text: string): void;
  add(text: string): Ref;
  /** A compressed stream; `entries` go into its dictionary. */
  addStream(data: Uint8Array | string, entries?: string): Ref;
  /** The file. `id` are 32 hexadecimal digits that name it. */
  file(root: Ref, info: Ref, id: string): Uint8Array;
}

export function createObjects(): PdfObjects {
  const objects: Uint8Array[] = [];
  const set = (ref: Ref, body: Uint8Array) => {
    objects[ref - 1] = joined([ascii(`${ref} 0 obj\n`), body, ascii('\nendobj\n')]);
  };
  const reserve = (): Ref => objects.push(new Uint8Array());
  return {
    reserve,
    set: (ref, text) => set(ref, ascii(text)),
    add(text) {
      const ref = reserve();
      set(ref, ascii(text));
      return ref;
    },
    addStream(data, entries = '') {
      const packed = zlibSync(typeof data === 'string' ? ascii(data) : data, { level: 6 });
      const dictionary = `<< /Filter /FlateDecode /Length ${packed.length} ${entries}>>\nstream\n`;
      const ref = reserve();
      set(ref, joined([ascii(dictionary), packed, ascii('\nendstream')]));
      return ref;
    },
    file(root, info, id) {
      const head = joined([ascii('%PDF-1.7\n%'), new Uint8Array([0xe2, 0xe3, 0xcf, 0xd3]), ascii('\n')]);
      let at = head.length;
      const rows = objects.map((object) => {
        const row = `${String(at).padStart(10, '0')} 00000 n \n`;
        at += object.length;
        return row;
      });
      const size = objects.length + 1;
      const tail = [
        `xref\n0 ${size}\n0000000000 65535 f \n${rows.join('')}`,
        `trailer\n<< /Size ${size} /Root ${root} 0 R /Info ${info} 0 R /ID [<${id}> <${id}>] >>\n`,
        `startxref\n${at}\n%%EOF\n`,
      ];
      return joined([head, ...objects, ascii(tail.join(''))]);
    },
  };
}

/** Text as a string object: UTF-16 with its mark, in hexadecimal. */
export function textString(text: string): string {
  const units = Array.from({ length: text.length }, (_, i) =>
    text.charCodeAt(i).toString(16).padStart(4, '0'),
  );
  return `<feff${units.join('')}>`;
}

/** A date as PDF writes it, in UTC. */
export function dateString(date: Date): string {
  return `(D:${date.toISOString().slice(0, 19).replace(/[-:T]/g, '')}Z)`;
}

function ascii(text: string): Uint8Array {
  return Uint8Array.from(text, (letter) => letter.charCodeAt(0));
}
