import type { Clip } from '../graph/edits/index.ts';
import { emptyJob } from '../graph/templates.ts';
import { readJob } from './read.ts';

/** A copy as text for the clipboard; `readClip` gives it back. */
export function writeClip(clip: Clip): string {
  return JSON.stringify(clip);
}

/**
 * A copy from the text of a clipboard, which may hold anything: `null` for what is not a copy of ours, or
 * one that would not stand as a job of its own.
 */
export function readClip(text: string): Clip | null {
  const raw = rawClip(text);
  if (!raw) return null;
  const template = emptyJob('metric');
  const [scheme] = template.schemes;
  if (!scheme) return null;
  const { bend: _usual, ...defaults } = scheme.defaults;
  const read = readJob(
    JSON.stringify({
      ...template,
      hoods: raw.hoods,
      blocks: raw.blocks,
      schemes: [
        {
          ...scheme,
          defaults: { ...defaults, ...(raw.bend !== undefined && { bend: raw.bend }) },
          nodes: raw.nodes,
          segments: raw.segments,
        },
      ],
    }),
    { repair: false },
  );
  const [made] = read.ok ? read.job.schemes : [];
  if (!read.ok || !made) return null;
  return {
    format: 'gentlebend-clip',
    version: 1,
    nodes: made.nodes,
    segments: made.segments,
    hoods: read.job.hoods,
    blocks: read.job.blocks,
    ...(made.defaults.bend !== undefined && { bend: made.defaults.bend }),
  };
}

function rawClip(text: string): Readonly<Record<string, unknown>> | null {
  if (!text.includes('"gentlebend-clip"')) return null;
  try {
    const raw: unknown = JSON.parse(text);
    if (typeof raw !== 'object' || raw === null) return null;
    const clip = raw as Readonly<Record<string, unknown>>;
    return clip.format === 'gentlebend-clip' && clip.version === 1 ? clip : null;
  } catch {
    return null;
  }
}
