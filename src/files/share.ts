import { deflateSync, Inflate } from 'fflate';
import type { Job } from '../graph/document.ts';
import { words } from '../words/index.ts';
import { type ReadResult, readJob } from './read.ts';

const { link } = words.share;

/** How the job is packed into a link; a new way gets the next number and the old one stays readable. */
const packing = 1;

const opening = '#job=';

/** Text of a job that a link may unfold to, bytes: far more than any that this program writes. */
const largestText = 24 * 1024 * 1024;

/** Packed bytes unfolded at once: deflate grows no more than about a thousandfold, so this stays near 1 MB. */
const portion = 1024;

/** Characters beyond which usual mail and chat programs cut or refuse a link. Common practice. */
export const longLink = 8_000;

/** Characters beyond which browsers refuse an address. Common practice. */
export const longestLink = 2_000_000;

export interface ShareOptions {
  /** Whether the pictures under the sheets go with the job. */
  readonly underlays: boolean;
}

/** The part of an address from `#` on that holds the whole job, so that no server ever sees it. */
export function shareFragment(job: Job, { underlays }: ShareOptions): string {
  const shared: Job = underlays ? job : { ...job, underlays: [] };
  const packed = deflateSync(new TextEncoder().encode(JSON.stringify(shared)), { level: 9 });
  const bytes = new Uint8Array(4 + packed.length);
  new DataView(bytes.buffer).setUint32(0, checksum(packed));
  bytes.set(packed, 4);
  return `${opening}${packing}.${toLetters(bytes)}`;
}

/** True where an address, or its part from `#` on, says that it holds a job. */
export function holdsJob(address: string): boolean {
  return address.includes(opening);
}

/**
 * The job in a link, read as any file is: checked, repaired with a list, or refused with reasons. Line
 * breaks and blanks that a mail program put in are let pass, and so is what follows the link. The checksum
 * is of the packed bytes, so that a changed letter is found before anything is unfolded.
 */
export function readShared(address: string): ReadResult {
  const at = address.indexOf(opening);
  const text = address.slice(at + opening.length).replace(/\s|%20|%0[ad]/gi, '');
  const parts = /^(\d{1,9})\.([\w-]+)/.exec(text);
  if (at < 0 || text === '') return refuse(link.empty);
  if (!parts) return refuse(link.damaged);
  if (Number(parts[1]) > packing) return refuse(link.newer);
  const bytes = fromLetters(parts[2] ?? '');
  if (Number(parts[1]) !== packing || bytes === null || bytes.length < 5) return refuse(link.damaged);
  const packed = bytes.subarray(4);
  if (new DataView(bytes.buffer).getUint32(0) !== checksum(packed)) return refuse(link.damaged);
  const json = unfold(packed);
  return 'text' in json ? readJob(json.text) : refuse(json.reason);
}

function refuse(message: string): ReadResult {
  return { ok: false, problems: [{ path: '', message }] };
}

/** Unfolds portion by portion and stops at the limit, whatever a hostile link would unfold to. */
function unfold(packed: Uint8Array): { readonly text: string } | { readonly reason: string } {
  const pieces: Uint8Array[] = [];
  let size = 0;
  let ended = false;
  const inflate = new Inflate((piece, last) => {
    pieces.push(piece);
    size += piece.length;
    ended = last;
  });
  try {
    for (let at = 0; at < packed.length; at += portion) {
      inflate.push(packed.subarray(at, at + portion), at + portion >= packed.length);
      if (size > largestText) return { reason: link.tooLarge(`${largestText / 1024 / 1024} MB`) };
    }
    if (!ended) return { reason: link.damaged };
    const whole = new Uint8Array(size);
    let to = 0;
    for (const piece of pieces) {
      whole.set(piece, to);
      to += piece.length;
    }
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(whole) };
  } catch {
    return { reason: link.damaged };
  }
}

/** base64url without padding (RFC 4648, section 5). */
function toLetters(bytes: Uint8Array): string {
  let binary = '';
  for (let at = 0; at < bytes.length; at += 0x8000)
    binary += String.fromCharCode(...bytes.subarray(at, at + 0x8000));
  return btoa(binary).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}

function fromLetters(letters: string): Uint8Array<ArrayBuffer> | null {
  try {
    const binary = atob(letters.replaceAll('-', '+').replaceAll('_', '/'));
    return Uint8Array.from(binary, (letter) => letter.charCodeAt(0));
  } catch {
    return null;
  }
}

const remainders = Uint32Array.from({ length: 256 }, (_, byte) => {
  let rest = byte;
  for (let bit = 0; bit < 8; bit += 1) rest = rest & 1 ? 0xedb88320 ^ (rest >>> 1) : rest >>> 1;
  return rest;
});

/** CRC-32 (ISO 3309), as in gzip. From memory; the test holds it to the published check value. */
export function checksum(bytes: Uint8Array): number {
  let rest = 0xffffffff;
  for (const byte of bytes) rest = (remainders[(rest ^ byte) & 0xff] ?? 0) ^ (rest >>> 8);
  return (rest ^ 0xffffffff) >>> 0;
}
