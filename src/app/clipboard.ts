import { nothing, type Selection } from '../canvas/board.ts';
import { deleteSelected } from '../canvas/tools/select/delete.ts';
import { readClip, writeClip } from '../files/clipboard.ts';
import type { Job, Scheme, Vec3 } from '../graph/document.ts';
import { type Clip, clip, paste } from '../graph/edits/index.ts';
import { schemeOf } from '../graph/infer.ts';
import { distance } from '../graph/vector.ts';
import { words } from '../words/index.ts';
import type { App } from './command.ts';

const says = words.commands.clipboard;

/** A pasted copy stands this far from what already stands there, m east and south. */
const BESIDE = 0.3048;

/** Copies what is selected, to the system's clipboard too where it may be written; false where nothing is. */
export function copySelection(app: App): boolean {
  const { job, schemeId, selection } = app.board.getState();
  const copied = clip(job, schemeId, selection);
  if (!copied) return false;
  app.ui.setState({ clip: copied });
  void globalThis.navigator?.clipboard?.writeText(writeClip(copied)).catch(() => {});
  app.say(says.copied(clipWords(copied)));
  return true;
}

/** Copies what is selected, and takes it off the sheets. */
export function cutSelection(app: App): void {
  if (!copySelection(app)) return;
  const { schemeId, selection } = app.board.getState();
  app.board.dispatch(words.edits.route.cut, (job) => deleteSelected(job, schemeId, selection));
  app.board.set({ selection: nothing });
}

/** Pastes what the system's clipboard holds, where it may be read and holds a copy; else what was copied here. */
export async function pasteAny(app: App, to?: Vec3): Promise<void> {
  const text = await globalThis.navigator?.clipboard?.readText().catch(() => '');
  const copied = readClip(text ?? '') ?? app.ui.getState().clip;
  if (copied) pasteClip(app, copied, to);
  else app.say(says.nothing);
}

/** Pastes a copy, its middle at `to`, else in its own place, or beside it where that is taken. */
export function pasteClip(app: App, copied: Clip, to?: Vec3): void {
  const { board } = app;
  const { job, schemeId } = board.getState();
  const bare = to ? [] : bareHoods(copied, schemeOf(job, schemeId));
  const delta = to ? towards(copied, to) : free(copied, job, schemeId, bare);
  let made: Selection = nothing;
  board.dispatch(words.edits.route.paste, (draft) => {
    deleteSelected(draft, schemeId, { nodes: bare, segments: [] });
    made = paste(draft, schemeId, copied, delta);
  });
  board.set({ tool: 'select', selection: made });
  app.sheets.reveal(made);
  app.say(says.pasted(clipWords(copied)));
}

/** From the middle of a copy to a place; a coordinate that is not a number is left as it is. */
function towards(copied: Clip, to: Vec3): Vec3 {
  const places = placesOf(copied);
  const step = (axis: 0 | 1 | 2) => {
    const along = places.map((at) => at[axis]);
    const middle = (Math.min(...along) + Math.max(...along)) / 2;
    return Number.isFinite(to[axis]) ? to[axis] - middle : 0;
  };
  return [step(0), step(1), step(2)];
}

/** Hoods that wait for their duct just where the copy brings them with theirs: a new scheme has them. */
function bareHoods(copied: Clip, { nodes, segments }: Scheme): string[] {
  return nodes
    .filter(
      ({ id, hood, at }) =>
        hood !== undefined &&
        segments.every(({ from, to }) => from !== id && to !== id) &&
        copied.nodes.some((node) => node.hood === hood && distance(node.at, at) < 1e-3),
    )
    .map(({ id }) => id);
}

function free(copied: Clip, job: Job, schemeId: string, but: readonly string[]): Vec3 {
  const nodes = schemeOf(job, schemeId).nodes.filter(({ id }) => !but.includes(id));
  const taken = [...nodes.map(({ at }) => at), ...job.blocks.map(({ min }) => min)];
  const places = placesOf(copied);
  for (let steps = 0; steps < 50; steps += 1) {
    const delta: Vec3 = [steps * BESIDE, -steps * BESIDE, 0];
    const clear = places.every(
      ([x, y, z]) =>
        !taken.some((at) => distance(at, [x + (delta[0] as number), y + (delta[1] as number), z]) < 1e-3),
    );
    if (clear) return delta;
  }
  return [BESIDE, -BESIDE, 0];
}

function placesOf({ nodes, blocks }: Clip): Vec3[] {
  return [...nodes.map(({ at }) => at), ...blocks.map(({ min }) => min)] as Vec3[];
}

function clipWords({ nodes, segments, blocks }: Clip): string {
  const parts = [
    segments.length > 0 && words.counts.ducts(segments.length),
    segments.length === 0 && nodes.length > 0 && words.counts.hoods(nodes.length),
    blocks.length > 0 && words.counts.blocks(blocks.length),
  ];
  return words.phrases.list.and(parts.filter((part) => part !== false));
}

const typesText = 'input, textarea, select, [contenteditable]';

/** Takes the browser's own paste wherever no text is being typed; the answer stops listening. */
export function listenForPaste(app: App): () => void {
  const hear = (event: ClipboardEvent) => {
    const at = event.target instanceof Element ? event.target : null;
    if (event.defaultPrevented || at?.closest(typesText)) return;
    const copied = readClip(event.clipboardData?.getData('text/plain') ?? '') ?? app.ui.getState().clip;
    if (!copied) return;
    event.preventDefault();
    pasteClip(app, copied);
  };
  window.addEventListener('paste', hear);
  return () => window.removeEventListener('paste', hear);
}
