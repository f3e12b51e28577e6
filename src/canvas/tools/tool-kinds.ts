import { findInline } from '../../hydraulics/catalogue.ts';
import type { Board, BoardState, ToolId, ToolKinds } from '../board.ts';
import { type BoxKind, blockKinds, exitKinds } from './box/kinds.ts';
import { actionOf } from './keys.ts';
import { inlineName, partKinds } from './part-names.ts';
import type { KeyInput } from './tool.ts';

/** A tool that makes things of several kinds. */
export type KindTool = keyof ToolKinds;

export interface KindChoice {
  readonly id: string;
  readonly name: string;
}

const boxes = (kinds: readonly BoxKind[]): KindChoice[] =>
  kinds.map(({ kind, name }) => ({ id: kind, name }));

/** The kinds that a tool makes, in the order in which Tab and the figures take them. */
export const toolKinds: Readonly<Record<KindTool, readonly KindChoice[]>> = {
  block: boxes(blockKinds),
  exit: boxes(exitKinds),
  part: partKinds.map((kind) => {
    return { id: kind, name: findInline(kind)?.name ?? inlineName({ kind }) };
  }),
};

export function hasKinds(tool: ToolId): tool is KindTool {
  return tool in toolKinds;
}

/** The kind that a tool makes next; its first one where the board names none that there is. */
export function kindInHand({ kinds }: Pick<BoardState, 'kinds'>, tool: KindTool): KindChoice {
  const all = toolKinds[tool];
  return all.find(({ id }) => id === kinds[tool]) ?? (all[0] as KindChoice);
}

/** The block or exit face that a tool draws next. */
export function boxInHand(state: Pick<BoardState, 'kinds'>, tool: 'block' | 'exit'): BoxKind {
  const { id } = kindInHand(state, tool);
  return (tool === 'block' ? blockKinds : exitKinds).find(({ kind }) => kind === id) as BoxKind;
}

/** Has a tool make another kind from now on. */
export function takeKind(board: Board, tool: KindTool, id: string): void {
  board.set({ kinds: { ...board.getState().kinds, [tool]: id } });
}

/** Takes another kind where the key asks for one: the one that it names, `null` where it asks for none. */
export function kindByKey(board: Board, tool: KindTool, input: KeyInput): KindChoice | null {
  const all = toolKinds[tool];
  const at = all.indexOf(kindInHand(board.getState(), tool));
  const action = actionOf(input, 'kind');
  const place =
    action === 'kind.next'
      ? at + 1
      : action === 'kind.back'
        ? at - 1
        : action === 'kind.take'
          ? Number(input.key) - 1
          : null;
  if (place === null) return null;
  const taken = all[action === 'kind.take' ? place : (place + all.length) % all.length];
  if (taken) takeKind(board, tool, taken.id);
  return taken ?? null;
}
