import type { UnitSystem } from '../graph/document.ts';
import { formatFlow } from '../units/index.ts';

export { formatPercent as percent } from '../units/index.ts';

export function capitalized(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** Air gained or lost, with its sign: "+38 cfm". */
export function gained(flow: number, units: UnitSystem): string {
  const amount = formatFlow(Math.abs(flow), units);
  return `${flow < 0 ? '−' : '+'}${amount}`;
}
