import type { Job } from '../../graph/document.ts';
import { writeJob } from '../write.ts';
import { sha256 } from './sha256.ts';
import type { Fingerprint } from './types.ts';

/**
 * SHA-256 of the job's file as this program writes it, so that a saved file can be held against a job sheet with
 * any tool that computes it.
 */
export function fingerprintOf(job: Job): Fingerprint {
  const digest = sha256(new TextEncoder().encode(writeJob(job)));
  const full = [...digest].map((byte) => byte.toString(16).padStart(2, '0')).join('');
  return { full, short: (full.slice(0, 16).match(/.{4}/g) ?? []).join(' ') };
}
