import { Button } from 'react-aria-components';
import type { BoardState } from '../canvas/board.ts';
import type { SheetId } from '../graph/sheet.ts';
import { words } from '../words/index.ts';
import { commandById } from './commands.ts';
import { useApp, useBoard } from './context.ts';
import { Marked } from './Marked.tsx';

const says = words.sheets.empty;

const begins = ['tool.hood', 'file.template', 'view.guide'] as const;

/** True while nothing at all is drawn and no tool that draws is in hand. */
function isBare({ job, schemeId, tool }: BoardState): boolean {
  const scheme = job.schemes.find(({ id }) => id === schemeId);
  return (
    tool === 'select' &&
    (scheme?.nodes.length ?? 0) + job.blocks.length + job.exits.length + job.underlays.length === 0
  );
}

/** What a sheet says on which nothing is drawn: where to begin, and which sheet is for what. */
export function EmptySheet({ sheet }: { sheet: SheetId }) {
  const app = useApp();
  const bare = useBoard(isBare);
  if (!bare) return null;
  return (
    <div className="empty-sheet">
      <p>
        <Marked text={sheet === 'floor' ? says.floor : says.section} />
      </p>
      {sheet === 'floor' && (
        <div className="empty-sheet-ways">
          {begins.map((id) => (
            <Button
              key={id}
              className={id === begins[0] ? 'button primary' : 'button'}
              onPress={() => commandById(id).run(app)}
            >
              {says.ways[id]}
            </Button>
          ))}
        </div>
      )}
    </div>
  );
}
