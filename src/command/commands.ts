import { check } from './check.ts';
import type { Command } from './command.ts';
import { parts } from './parts.ts';
import { propose } from './propose.ts';
import { report } from './report.ts';
import { solve } from './solve.ts';
import { validate } from './validate.ts';

/** Every command of the command line, in the order of its help. */
export const commands: readonly Command[] = [solve, check, propose, parts, report, validate];
