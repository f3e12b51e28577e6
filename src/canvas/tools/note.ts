import { addNote } from '../../graph/edits/index.ts';
import { only } from '../selection.ts';
import { placing } from './placing.ts';
import type { Phase, ToolContext } from './tool.ts';

/** The note tool: a click opens a field to type into, and the words are pinned there. */
export function noteReady(context: ToolContext): Phase {
  const { board } = context;
  return placing(context, {
    name: 'note/ready',
    show: (at) => context.draw(at.sheet, [{ kind: 'note', at: at.point, text: 'pin a note' }]),
    place(at) {
      const { sheet, point } = at;
      context.draw(null, []);
      context.ask({
        sheet,
        at: point,
        label: 'Words of the note',
        value: '',
        lines: true,
        commit(text) {
          if (text.trim() === '') return null;
          let id: string | null = null;
          board.dispatch('pin note', (job) => {
            id = addNote(job, { sheet, at: [point.u, point.v], text: text.trim() });
          });
          if (id === null) return 'A note has room for 10,000 characters.';
          board.set({ tool: 'select', selection: only({ kind: 'note', id }) });
          return null;
        },
      });
    },
  });
}
