import type { Draft } from 'immer';
import type { Job } from '../../../graph/document.ts';
import {
  deleteSelection,
  removeBlock,
  removeDimension,
  removeExit,
  removeInline,
  removeNote,
} from '../../../graph/edits/index.ts';
import type { Selection } from '../../board.ts';
import { idsOf, partOf } from '../../selection.ts';

/** Deletes all that is selected: duct with healing, parts in line, blocks, exits, notes and dimensions. */
export function deleteSelected(job: Draft<Job>, schemeId: string, selection: Selection): void {
  for (const id of idsOf(selection, 'dimension')) removeDimension(job, schemeId, id);
  const parts = idsOf(selection, 'part').map(partOf);
  for (const { segment, index } of parts.sort((a, b) => b.index - a.index))
    removeInline(job, schemeId, segment, index);
  for (const id of idsOf(selection, 'note')) removeNote(job, id);
  for (const id of idsOf(selection, 'block')) removeBlock(job, id);
  for (const id of idsOf(selection, 'exit')) removeExit(job, id);
  if (selection.nodes.length + selection.segments.length > 0) deleteSelection(job, schemeId, selection);
}
