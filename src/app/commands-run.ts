import { type BoardState, nothing } from '../canvas/board.ts';
import { single } from '../canvas/selection.ts';
import { capForDirection, exitAt, usualCap } from '../canvas/tools/exits.ts';
import { insertNode, joinNodes, setCap, splitRun } from '../graph/edits/index.ts';
import { neighbour, type Stop, traceRoute, type Way } from '../graph/trace.ts';
import { lerp } from '../graph/vector.ts';
import { type App, type Command, command } from './command.ts';

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
  board.dispatch('insert node', (job) => {
    made = insertNode(job, state.schemeId, leg.id, lerp(from, to, 0.5)).node;
  });
  if (made !== null) board.set({ selection: { nodes: [made], segments: [] } });
  say('A node was put in the middle of the duct.');
}

function putCap({ board, say }: App): void {
  const state = board.getState();
  const node = loneNode(state);
  if (!node) return;
  const leg = state.solution.route.segments.get(node.segments[0] ?? '');
  const exit = exitAt(state.job, node.at, AT_EXIT);
  const cap = exit ? usualCap[exit.kind] : capForDirection(leg?.to === node.id ? leg.direction : null);
  board.dispatch('place cap', (job) => void setCap(job, state.schemeId, node.id, cap));
  say('Cap placed.');
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
      say(
        way === 'branch'
          ? 'No branch here.'
          : way === 'downstream'
            ? 'The run ends here.'
            : 'The run starts here.',
      );
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
  command('run.insert', 'edit', 'Put a turn in the middle', insert, {
    also: 'insert node split duct leg point',
    enabled: (state) => lone(state)?.kind === 'segment',
  }),
  command('run.cap', 'edit', 'Put a cap on this end', putCap, {
    also: 'place wall roof exit outside',
    enabled: (state) => loneNode(state)?.kind === 'open end',
  }),
  command(
    'run.uncap',
    'edit',
    'Take the cap off',
    ({ board, say }) => {
      const state = board.getState();
      const node = loneNode(state);
      if (!node) return;
      board.dispatch('take cap off', (job) => void setCap(job, state.schemeId, node.id, null));
      say('The end is open.');
    },
    { also: 'remove open end', enabled: (state) => loneNode(state)?.kind === 'cap' },
  ),
  command(
    'run.part',
    'edit',
    'Part the ducts here',
    ({ board, say }) => {
      const state = board.getState();
      const node = loneNode(state);
      if (!node) return;
      board.dispatch('part ducts', (job) => void splitRun(job, state.schemeId, node.id));
      say('The ducts no longer meet here.');
    },
    {
      also: 'split disconnect separate cut apart',
      enabled: (state) => (loneNode(state)?.segments.length ?? 0) > 1,
    },
  ),
  command(
    'run.join',
    'edit',
    'Join the two ends',
    ({ board, say }) => {
      const state = board.getState();
      const pair = twoNodes(state);
      if (!pair) return;
      let made: ReturnType<typeof joinNodes> = null;
      board.dispatch('join ends', (job) => {
        made = joinNodes(job, state.schemeId, pair[0], pair[1]);
      });
      say(made ? 'Joined.' : 'These two are joined already.');
      if (made) board.set({ selection: nothing });
    },
    { also: 'connect close duct between merge', enabled: (state) => twoNodes(state) !== undefined },
  ),
  command(
    'run.lab',
    'view',
    'Try this turn in the bend lab',
    ({ board, ui }) => ui.setState({ lab: { node: loneNode(board.getState())?.id ?? null } }),
    {
      also: 'radius elbow kinds teach',
      enabled: (state) => loneNode(state)?.bend !== undefined,
    },
  ),
  command('run.next', 'view', 'Go on along the air', travel('downstream'), {
    shortcuts: [']', 'Mod+ArrowRight'],
    also: 'next downstream travel walk step',
  }),
  command('run.previous', 'view', 'Go back against the air', travel('upstream'), {
    shortcuts: ['[', 'Mod+ArrowLeft'],
    also: 'previous upstream travel walk step',
  }),
  command('run.branch', 'view', 'Go to the other branch', travel('branch'), {
    shortcuts: ['Mod+ArrowDown'],
    also: 'junction travel walk step',
  }),
];
