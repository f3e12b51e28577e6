/**
 * Edits of the job document: recipes for a draft. Each keeps the document valid (ends that exist, no
 * segment from a node to itself, no two segments between the same nodes, fittings on their segment)
 * and gives the ids that it made. An id that is not there throws, so that nothing is half done.
 */
export * from './draw.ts';
export { findScheme, freshId } from './find.ts';
export * from './job.ts';
export * from './move.ts';
export * from './parts.ts';
export * from './remove.ts';
export * from './schemes.ts';
