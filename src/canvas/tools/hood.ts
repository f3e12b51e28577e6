import type { Hood, Job } from '../../graph/document.ts';
import { addHood, freshId } from '../../graph/edits/index.ts';
import { schemeOf } from '../../graph/infer.ts';
import { unproject } from '../../graph/sheet.ts';
import { genericHood } from '../../graph/templates.ts';
import { INCH } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { restingDepth } from './depth.ts';
import { placing } from './placing.ts';
import { snapShapes } from './show.ts';
import type { Phase, PointerInput, ToolContext } from './tool.ts';

/** Top of a cooktop above the floor, m: common practice. */
const COOKTOP_HEIGHT = 36 * INCH;
/** Cooktop to hood where the job does not say, m: common practice for a gas range. */
const USUAL_MOUNTING = 30 * INCH;
/** Underside of a hood to its collar, m: common practice. */
const HOOD_BODY = 9 * INCH;

/** Height of a hood's collar where the sheet does not show it, m above the floor. */
export function collarHeight(job: Job): number {
  return COOKTOP_HEIGHT + (job.kitchen.mountingHeight ?? USUAL_MOUNTING) + HOOD_BODY;
}

/** The hood tool: a click places a hood, its collar there and facing up. */
export function hoodReady(context: ToolContext): Phase {
  const { board } = context;

  const placeOf = (at: PointerInput) => {
    const state = board.getState();
    const depth = at.sheet === 'floor' ? collarHeight(state.job) : restingDepth(state, at.sheet);
    const snapped = context.snapAt(at, { depth });
    return { snapped, at: unproject(snapped.point, at.sheet, depth) };
  };

  return placing(context, {
    name: 'hood/ready',
    show(at) {
      const { snapped } = placeOf(at);
      context.draw(at.sheet, [
        { kind: 'node', at: snapped.point },
        ...snapShapes(snapped),
        { kind: 'note', at: snapped.point, text: words.tools.hood.here },
      ]);
    },
    place(at) {
      const { job, schemeId } = board.getState();
      const hood = unplaced(job, schemeId);
      const collar = placeOf(at).at;
      let node: string | null = null;
      board.dispatch(words.edits.route.placeHood, (draft) => {
        node = addHood(draft, schemeId, collar, hood);
      });
      if (node === null) return;
      board.set({ tool: 'select', selection: { nodes: [node], segments: [] } });
      context.announce(words.table.extend.hoodPlaced);
    },
  });
}

/** The job's first hood that the scheme does not show, or a new invented one. */
function unplaced(job: Job, schemeId: string): Hood {
  const shown = new Set(schemeOf(job, schemeId).nodes.map(({ hood }) => hood));
  return job.hoods.find(({ id }) => !shown.has(id)) ?? genericHood(freshId('h', job.hoods));
}
