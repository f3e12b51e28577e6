import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { words } from '../words/index.ts';

/** What the command line has around it; a Node process fits. */
export interface Surroundings {
  readonly stdout: { write(text: string): unknown };
  /** `isTTY` where somebody is looking. */
  readonly stderr: { write(text: string): unknown; readonly isTTY?: boolean };
  readonly stdin?: AsyncIterable<string | Uint8Array>;
  /** `INIT_CWD`: the folder that npm was started in, before it went to the project's own. */
  readonly env: { readonly INIT_CWD?: string | undefined };
}

/** What stands in a file, or why it could not be read. */
export type ReadText =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly why: string };

/**
 * Reads a file that is named from the working folder or, failing that, from the folder that npm was started in;
 * `-` is standard input. UTF-8.
 */
export async function readText(file: string, { stdin, env }: Surroundings): Promise<ReadText> {
  try {
    if (file === '-') return { ok: true, text: await all(stdin) };
    const elsewhere = env.INIT_CWD;
    const path = elsewhere === undefined || existsSync(file) ? file : resolve(elsewhere, file);
    return { ok: true, text: await readFile(path, 'utf8') };
  } catch (error) {
    return { ok: false, why: whyNot(error) };
  }
}

async function all(stdin: Surroundings['stdin']): Promise<string> {
  const decoder = new TextDecoder();
  let text = '';
  for await (const chunk of stdin ?? [])
    text += typeof chunk === 'string' ? chunk : decoder.decode(chunk, { stream: true });
  return text + decoder.decode();
}

/** Why a file could not be read or written, in words. */
export function whyNot(error: unknown): string {
  const { failures } = words.command;
  const code = error instanceof Error && 'code' in error ? error.code : null;
  if (code === 'ENOENT') return failures.missing;
  if (code === 'EISDIR') return failures.folder;
  if (code === 'EACCES') return failures.forbidden;
  return error instanceof Error ? error.message : String(error);
}
