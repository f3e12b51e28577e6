/** Parts of red, green and blue, 0-1. */
export interface Colour {
  readonly r: number;
  readonly g: number;
  readonly b: number;
}

/** The colour of `#rrggbb`. */
export function colour(hex: string): Colour {
  const part = (at: number) => Number.parseInt(hex.slice(at, at + 2), 16) / 255;
  return { r: part(1), g: part(3), b: part(5) };
}
