import type { UnitSystem } from '../graph/document.ts';
import { formatFlow } from '../units/index.ts';

/** `0.784` as "78 %"; small shares keep a digit. */
export function percent(share: number): string {
  const value = 100 * share;
  return `${Math.abs(value) < 9.95 && Math.abs(value) >= 0.05 ? value.toFixed(1) : Math.round(value)} %`;
}

export function capitalized(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** Small first: a count and its noun. */
export function counted(n: number, noun: string): string {
  return `${n} ${noun}${n === 1 ? '' : 's'}`;
}

/** Air gained or lost, with its sign: "+38 cfm". */
export function gained(flow: number, units: UnitSystem): string {
  const amount = formatFlow(Math.abs(flow), units);
  return `${flow < 0 ? '−' : '+'}${amount}`;
}
