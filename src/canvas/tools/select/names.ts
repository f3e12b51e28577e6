import { placesOf } from '../../../graph/places.ts';
import { words } from '../../../words/index.ts';
import type { BoardState } from '../../board.ts';
import { type Item, partOf } from '../../selection.ts';
import { inlineName } from '../part-names.ts';

const says = words.tools.select;

/** What a thing is called in the words of the sheet: "turn 2 of 4", "wall cabinet", "backdraught damper". */
export function wordsFor({ kind, id }: Item, { job, schemeId, solution }: BoardState): string {
  switch (kind) {
    case 'node':
      return placesOf(solution.route).node(id);
    case 'segment':
      return placesOf(solution.route).leg(id);
    case 'block': {
      const block = job.blocks.find((each) => each.id === id);
      return block?.name || (block ? words.tools.kinds[block.kind] : says.names.block);
    }
    case 'exit':
      return job.exits.find((each) => each.id === id)?.name || says.names.exit;
    case 'part': {
      const { segment, index } = partOf(id);
      const scheme = job.schemes.find((each) => each.id === schemeId);
      const part = scheme?.segments.find((each) => each.id === segment)?.fittings?.[index];
      return part ? inlineName(part) : words.tools.part.unnamed;
    }
    default:
      return says.names[kind];
  }
}
