/** A repeatable source of numbers from 0 up to 1. Source: the mulberry32 mixer, public domain, from memory. */
export type Random = () => number;

export function seeded(seed: number): Random {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

export const between = (random: Random, low: number, high: number): number => low + (high - low) * random();
export const whole = (random: Random, low: number, high: number): number =>
  low + Math.floor(random() * (high - low + 1));
export function pick<T>(random: Random, from: readonly T[]): T {
  return from[Math.floor(random() * from.length)] as T;
}
