import { type BoardState, nothing } from '../canvas/board.ts';
import { single } from '../canvas/selection.ts';
import { capForDirection, exitAt, usualCap } from '../canvas/tools/exits.ts';
import { insertNode, joinNodes, setCap, splitRun } from '../graph/edits/index.ts';
import { neighbour, type Stop, traceRoute, type Way } from '../graph/trace.ts';
import { lerp } from '../graph/vector.ts';
import { words } from '../words/index.ts';
import { type App, type Command, command } from './command.ts';

const says = words.commands.run;

/** An end closer to an exit face than this, m, goes out through it. */
const AT_EXIT = 0.05;

/** The node or the duct selected alone. */
function lone({ selection }: BoardState): Stop | undefined {
  const item = single(selection);
  return item?.kind === 'node' || item?.kind === 'segment' ? { kind: item.kind, id: item.id } : undefined;
}

const loneNode = (state: BoardState) => {
  const at = lone(state);
  return at?.kind === 'node' ? state.solution.route.nodes.get(at.id) : undefined;
};

const twoNodes = ({ selection }: BoardState): readonly [string, string] | undefined => {
  const [one, other, ...more] = selection.nodes;
  if (one === undefined || other === undefined || more.length + selection.segments.length > 0)
    return undefined;
  return [one, other];
};

function insert({ board, say }: App): void {
  const state = board.getState();
  const at = lone(state);
  const leg = at?.kind === 'segment' ? state.solution.route.segments.get(at.id) : undefined;
  const [from, to] = [leg?.from, leg?.to].map((id) => state.solution.route.nodes.get(id ?? '')?.at);
  if (!leg || !from || !to) return;
  let made: string | null = null;
  board.dispatch(words.edits.route.insertNode, (job) => {
    made = insertNode(job, state.schemeId, leg.id, lerp(from, to, 0.5)).node;
  });
  if (made !== null) board.set({ selection: { nodes: [made], segments: [] } });
  say(says.insert.done);
}

function putCap({ board, say }: App): void {
  const state = board.getState();
  const node = loneNode(state);
  if (!node) return;
  const leg = state.solution.route.segments.get(node.segments[0] ?? '');
  const exit = exitAt(state.job, node.at, AT_EXIT);
  const cap = exit ? usualCap[exit.kind] : capForDirection(leg?.to === node.id ? leg.direction : null);
  board.dispatch(words.edits.route.placeCap, (job) => void setCap(job, state.schemeId, node.id, cap));
  say(says.cap.done);
}

/** Goes on along the duct and says what is there. */
function travel(way: Way) {
  return ({ board, sheets, say }: App): void => {
    const state = board.getState();
    const { route } = state.solution;
    const at = lone(state);
    const [first] = traceRoute(state.live, state.schemeId);
    const next = at ? neighbour(route, at, way) : (first ?? null);
    if (!next) {
      say(way === 'branch' ? says.noBranch : way === 'downstream' ? says.ends : says.starts);
      return;
    }
    const selection =
      next.kind === 'node' ? { nodes: [next.id], segments: [] } : { nodes: [], segments: [next.id] };
    board.set({ tool: 'select', selection });
    sheets.reveal(selection);
    const row = traceRoute(state.live, state.schemeId).find(
      ({ id, kind }) => id === next.id && kind === next.kind,
    );
    if (row) say(`${row.words}.`);
  };
}

/** What is done at one place of a run, and going along it. */
export const runCommands: readonly Command[] = [
  command('run.insert', 'edit', says.insert.title, insert, {
    also: says.insert.also,
    enabled: (state) => lone(state)?.kind === 'segment',
  }),
  command('run.cap', 'edit', says.cap.title, putCap, {
    also: says.cap.also,
    enabled: (state) => loneNode(state)?.kind === 'open end',
  }),
  command(
    'run.uncap',
    'edit',
    says.uncap.title,
    ({ board, say }) => {
      const state = board.getState();
      const node = loneNode(state);
      if (!node) return;
      board.dispatch(words.edits.route.takeCapOff, (job) => void setCap(job, state.schemeId, node.id, null));
      say(says.uncap.done);
    },
    { also: says.uncap.also, enabled: (state) => loneNode(state)?.kind === 'cap' },
  ),
  command(
    'run.part',
    'edit',
    says.part.title,
    ({ board, say }) => {
      const state = board.getState();
      const node = loneNode(state);
      if (!node) return;
      board.dispatch(words.edits.route.partDucts, (job) => void splitRun(job, state.schemeId, node.id));
      say(says.part.done);
    },
    {
      also: says.part.also,
      enabled: (state) => (loneNode(state)?.segments.length ?? 0) > 1,
    },
  ),
  command(
    'run.join',
    'edit',
    says.join.title,
    ({ board, say }) => {
      const state = board.getState();
      const pair = twoNodes(state);
      if (!pair) return;
      let made: ReturnType<typeof joinNodes> = null;
      board.dispatch(words.edits.route.joinEnds, (job) => {
        made = joinNodes(job, state.schemeId, pair[0], pair[1]);
      });
      say(made ? says.join.done : says.join.refused);
      if (made) board.set({ selection: nothing });
    },
    { also: says.join.also, enabled: (state) => twoNodes(state) !== undefined },
  ),
  command(
    'run.lab',
    'view',
    says.lab.title,
    ({ board, ui }) => ui.setState({ lab: { node: loneNode(board.getState())?.id ?? null } }),
    {
      also: says.lab.also,
      enabled: (state) => loneNode(state)?.bend !== undefined,
    },
  ),
  command('run.next', 'view', says.next.title, travel('downstream'), {
    shortcuts: [']', 'Mod+ArrowRight'],
    also: says.next.also,
  }),
  command('run.previous', 'view', says.previous.title, travel('upstream'), {
    shortcuts: ['[', 'Mod+ArrowLeft'],
    also: says.previous.also,
  }),
  command('run.branch', 'view', says.branch.title, travel('branch'), {
    shortcuts: ['Mod+ArrowDown'],
    also: says.branch.also,
  }),
];
