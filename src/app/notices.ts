import type { Problem, Repair } from '../files/problem.ts';
import { words } from '../words/index.ts';
import type { Notice } from './ui.ts';

const says = words.notices;

/** Why a file was not taken, place by place. */
export function refusal(name: string, problems: readonly Problem[]): Notice {
  return {
    title: says.refused.title(name),
    text: says.refused.text,
    details: problems,
  };
}

/** What was put right in a file, or brought from an older version of the format, so that it could be taken. */
export function repaired(name: string, repairs: readonly Repair[]): Notice {
  const older = repairs.filter(({ path }) => path === 'version');
  if (older.length > 0) {
    return {
      title: says.older.title(name),
      text: older.length === repairs.length ? says.older.text : says.older.andRepaired,
      details: repairs,
    };
  }
  return {
    title: says.repaired.title(name),
    text: says.repaired.text(words.counts.places(repairs.length)),
    details: repairs,
  };
}
