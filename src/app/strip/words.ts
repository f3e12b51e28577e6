/** A level with how far it may be off: `62 dBA ±5`; a dash where nothing is heard. */
export function decibels(level: number, uncertainty: number): string {
  return Number.isFinite(level) ? `${Math.round(level)} dBA ±${Math.round(uncertainty)}` : '–';
}

/** Loudness: a decimal below ten, none above. */
export function sonesText(sones: number): string {
  if (!Number.isFinite(sones)) return '–';
  const figure = sones < 9.95 ? sones.toFixed(1) : String(Math.round(sones));
  return `${figure} sone${figure === '1.0' ? '' : 's'}`;
}
