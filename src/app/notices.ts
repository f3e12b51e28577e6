import type { Problem, Repair } from '../files/problem.ts';
import type { Notice } from './ui.ts';
import { counted } from './wording.ts';

/** Why a file was not taken, place by place. */
export function refusal(name: string, problems: readonly Problem[]): Notice {
  return {
    title: `${name} was not opened`,
    text: 'Nothing on the board has changed. This is wrong in the file:',
    details: problems,
  };
}

/** What was put right in a file so that it could be taken. */
export function repaired(name: string, repairs: readonly Repair[]): Notice {
  return {
    title: `${name} was repaired`,
    text: `${counted(repairs.length, 'place')} in the file had to be put right. Look them over before relying on the numbers:`,
    details: repairs,
  };
}
