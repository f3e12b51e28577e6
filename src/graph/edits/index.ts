/**
 * Edits of the job document: recipes for a draft. Each keeps the document valid (ends that exist, no
 * segment from a node to itself, no two segments between the same nodes, fittings on their segment)
 * and gives the ids that it made. An id that is not there throws, so that nothing is half done.
 */
export * from './blocks.ts';
export * from './clipboard.ts';
export * from './draw.ts';
export * from './fan-data.ts';
export { findScheme, freshId } from './find.ts';
export * from './job.ts';
export * from './joints.ts';
export * from './move.ts';
export {
  addDimension,
  addNote,
  changeNote,
  moveDimension,
  removeDimension,
  removeNote,
} from './notes.ts';
export * from './parts.ts';
export * from './profile.ts';
export * from './remove.ts';
export * from './runs.ts';
export * from './schemes.ts';
export * from './transform.ts';
export * from './underlays.ts';
