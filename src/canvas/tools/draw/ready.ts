import { schemeOf } from '../../../graph/infer.ts';
import { project, unproject } from '../../../graph/sheet.ts';
import { words } from '../../../words/index.ts';
import { nothing } from '../../board.ts';
import { restingDepth } from '../depth.ts';
import { actionOf } from '../keys.ts';
import type { Phase, PointerInput, ToolContext } from '../tool.ts';
import { drawing } from './drawing.ts';
import type { Anchor } from './run.ts';

const says = words.tools.draw;

/** The draw tool before the first click: shows what a run would start from. */
export function drawReady(context: ToolContext): Phase {
  const { board } = context;

  const startAt = (at: PointerInput): { anchor: Anchor; words: string } => {
    const picked = context.pickAt(at, { endsFirst: true });
    if (picked?.kind === 'node') return { anchor: { kind: 'node', id: picked.id }, words: says.fromHere };
    const snapped = context.snapAt(at);
    if (picked) {
      const place = snapped.segment?.id === picked.id ? snapped.at : picked.at;
      return { anchor: { kind: 'segment', id: picked.id, at: place }, words: says.branchFromHere };
    }
    const place = unproject(snapped.point, at.sheet, restingDepth(board.getState(), at.sheet));
    return { anchor: { kind: 'place', at: place }, words: says.startRun };
  };

  const show = (at: PointerInput) => {
    const { anchor, words } = startAt(at);
    const { job, schemeId } = board.getState();
    const node =
      anchor.kind === 'node' ? schemeOf(job, schemeId).nodes.find(({ id }) => id === anchor.id) : undefined;
    const place = anchor.kind === 'node' ? node?.at : anchor.at;
    const nodes = anchor.kind === 'node' ? [anchor.id] : [];
    const segments = anchor.kind === 'segment' ? [anchor.id] : [];
    context.hover({ nodes, segments });
    if (place) context.draw(at.sheet, [{ kind: 'snap', at: project(place, at.sheet), reason: words }]);
  };

  /** From the keyboard a run starts at the one node selected, else at a bare hood. */
  const chosen = (): string | undefined => {
    const { job, schemeId, selection } = board.getState();
    const { nodes, segments } = schemeOf(job, schemeId);
    if (selection.nodes.length === 1) return selection.nodes[0];
    return nodes.find(
      ({ id, role }) => role === 'hood' && !segments.some(({ from, to }) => from === id || to === id),
    )?.id;
  };

  const self: Phase = {
    name: 'draw/ready',
    cursor: 'crosshair',
    leave() {
      context.draw(null, []);
      context.hover(nothing);
    },
    move(at) {
      show(at);
      return undefined;
    },
    out() {
      context.draw(null, []);
      context.hover(nothing);
    },
    down(at) {
      if (at.button !== 0 || at.clicks === 2) return undefined;
      return drawing(context, [startAt(at).anchor], at.sheet, at);
    },
    key(input) {
      if (actionOf(input, 'sheets') === 'cancel') {
        board.set({ tool: 'select' });
        return true;
      }
      const id = actionOf(input, 'draw') === 'leg.commit' ? chosen() : undefined;
      return id ? drawing(context, [{ kind: 'node', id }], input.sheet, null) : false;
    },
    cancel: () => self,
  };
  return self;
}
