import type { UnitSystem } from '../../graph/document.ts';

export interface DrawingScale {
  readonly name: string;
  /** Metres of house a metre of paper. */
  readonly ratio: number;
}

/** Inches of paper a foot of house, as they are written on drawings: common practice. */
const imperial: readonly DrawingScale[] = [
  { name: `1/8" = 1'-0"`, ratio: 96 },
  { name: `3/16" = 1'-0"`, ratio: 64 },
  { name: `1/4" = 1'-0"`, ratio: 48 },
  { name: `3/8" = 1'-0"`, ratio: 32 },
  { name: `1/2" = 1'-0"`, ratio: 24 },
  { name: `3/4" = 1'-0"`, ratio: 16 },
  { name: `1" = 1'-0"`, ratio: 12 },
];

const metric: readonly DrawingScale[] = [200, 100, 50, 25, 20, 10, 5].map((ratio) => ({
  name: `1:${ratio}`,
  ratio,
}));

/** The usual drawing scales, those of the system first. */
export function drawingScales(units: UnitSystem): readonly DrawingScale[] {
  const full = { name: '1:1', ratio: 1 };
  return units === 'imperial' ? [...imperial, ...metric, full] : [...metric, full, ...imperial];
}
