import { words } from '../../words/index.ts';
import { type DraftJob, findScheme, freshId, plainCopy } from './find.ts';

const says = words.route.schemes;

/** Copies a scheme, puts the copy after it, and gives the copy's id. */
export function duplicateScheme(job: DraftJob, schemeId: string, name?: string): string {
  const scheme = findScheme(job, schemeId);
  const id = freshId('s', job.schemes);
  const copy = { ...plainCopy(scheme), id, name: freeName(job, name?.trim() || says.copyOf(scheme.name)) };
  job.schemes.splice(job.schemes.indexOf(scheme) + 1, 0, copy);
  return id;
}

/** Adds a scheme with nothing drawn but the hoods of another one, made as that one is, and gives its id. */
export function addScheme(job: DraftJob, likeId: string, name?: string): string {
  const like = plainCopy(findScheme(job, likeId));
  const id = freshId('s', job.schemes);
  const hoods = like.nodes.filter((node) => node.role === 'hood');
  job.schemes.push({
    id,
    name: freeName(job, name?.trim() || says.added),
    defaults: like.defaults,
    nodes: hoods,
    segments: [],
  });
  return id;
}

/** Renames a scheme; an empty name, and one of more than 200 characters, is refused with `false`. */
export function renameScheme(job: DraftJob, schemeId: string, name: string): boolean {
  const scheme = findScheme(job, schemeId);
  const trimmed = name.trim();
  if (trimmed === '' || trimmed.length > 200) return false;
  scheme.name = trimmed;
  return true;
}

/** Removes a scheme. The last one stays: `false`. */
export function removeScheme(job: DraftJob, schemeId: string): boolean {
  const scheme = findScheme(job, schemeId);
  if (job.schemes.length === 1) return false;
  job.schemes.splice(job.schemes.indexOf(scheme), 1);
  return true;
}

function freeName(job: DraftJob, wanted: string): string {
  const taken = new Set(job.schemes.map((scheme) => scheme.name));
  const base = wanted.slice(0, 190);
  for (let number = 1; ; number += 1) {
    const name = number === 1 ? base : says.numbered(base, number);
    if (!taken.has(name)) return name;
  }
}
