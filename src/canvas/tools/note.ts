import { addNote } from '../../graph/edits/index.ts';
import { words } from '../../words/index.ts';
import { only } from '../selection.ts';
import { placing } from './placing.ts';
import type { Phase, ToolContext } from './tool.ts';

const says = words.tools.note;

/** The note tool: a click opens a field to type into, and the words are pinned there. */
export function noteReady(context: ToolContext): Phase {
  const { board } = context;
  return placing(context, {
    name: 'note/ready',
    show: (at) => context.draw(at.sheet, [{ kind: 'note', at: at.point, text: says.pin }]),
    place(at) {
      const { sheet, point } = at;
      context.draw(null, []);
      context.ask({
        sheet,
        at: point,
        label: says.text,
        value: '',
        lines: true,
        commit(text) {
          if (text.trim() === '') return null;
          let id: string | null = null;
          board.dispatch(words.edits.room.pinNote, (job) => {
            id = addNote(job, { sheet, at: [point.u, point.v], text: text.trim() });
          });
          if (id === null) return says.tooLong;
          board.set({ tool: 'select', selection: only({ kind: 'note', id }) });
          return null;
        },
      });
    },
  });
}
