import type { Job } from '../../graph/document.ts';
import { writeJob } from '../write.ts';
import type { Fingerprint } from './types.ts';

/**
 * SHA-256 of the job's file as this program writes it, so that a saved file can be held against a job sheet with
 * any tool that computes it. Null on a page without Web Crypto, which browsers keep from pages that are served
 * neither from this machine nor over https.
 */
export async function fingerprintOf(job: Job): Promise<Fingerprint | null> {
  const subtle = globalThis.crypto?.subtle as SubtleCrypto | undefined;
  if (!subtle) return null;
  const digest = await subtle.digest('SHA-256', new TextEncoder().encode(writeJob(job)));
  const full = [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
  return { full, short: (full.slice(0, 16).match(/.{4}/g) ?? []).join(' ') };
}
