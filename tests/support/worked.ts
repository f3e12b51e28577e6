import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { main } from '../../src/command/main.ts';

/**
 * Textbook arithmetic for worked examples, apart from the program's own: formulae as they are printed, roots by
 * bisection. SI.
 */

export const INCH = 0.0254;

/** Where a falling or rising function crosses zero between two places, by halving. */
export function root(f: (x: number) => number, low: number, high: number): number {
  const rises = f(high) > f(low);
  for (let i = 0; i < 200; i++) {
    const middle = (low + high) / 2;
    if (f(middle) > 0 === rises) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}

/** Darcy friction factor by Colebrook-White; turbulent flow only. */
export function colebrook(re: number, relativeRoughness: number): number {
  const x = root((y) => y + 2 * Math.log10(relativeRoughness / 3.7 + (2.51 * y) / re), 1, 20);
  return 1 / (x * x);
}

export interface TextbookAir {
  readonly density: number;
  readonly viscosity: number;
}

/** Standard atmosphere, Magnus and Sutherland: moist air at an elevation (m), temperature (°C) and relative humidity. */
export function airAt(elevation: number, celsius: number, humidity: number): TextbookAir {
  const pressure = 101325 * (1 - 2.25577e-5 * elevation) ** 5.2559;
  const kelvin = celsius + 273.15;
  const vapour = humidity * 611.2 * Math.exp((17.62 * celsius) / (243.12 + celsius));
  return {
    density: (pressure - vapour) / (287.05 * kelvin) + vapour / (461.5 * kelvin),
    viscosity: (1.458e-6 * kelvin ** 1.5) / (kelvin + 110.4),
  };
}

/** Velocity pressure, Pa. */
export const velocityPressure = (q: number, area: number, air: TextbookAir): number =>
  (air.density / 2) * (q / area) ** 2;

export interface Duct {
  readonly length: number;
  readonly area: number;
  readonly hydraulicDiameter: number;
  readonly roughness: number;
}

export const circle = (diameter: number): number => (Math.PI / 4) * diameter ** 2;
export const roundDuct = (length: number, diameter: number, roughness: number): Duct => ({
  length,
  area: circle(diameter),
  hydraulicDiameter: diameter,
  roughness,
});

/** Darcy-Weisbach, Pa. */
export function friction(duct: Duct, q: number, air: TextbookAir): number {
  const { length, area, hydraulicDiameter: d, roughness } = duct;
  const re = (air.density * (q / area) * d) / air.viscosity;
  return colebrook(re, roughness / d) * (length / d) * velocityPressure(q, area, air);
}

export interface SolvedSpeed {
  readonly hood: string;
  readonly name: string;
  readonly flow: number;
  readonly totalPressure: number;
  readonly house: { readonly pressure: number; readonly leakage: number } | null;
  readonly segments: readonly {
    readonly id: string;
    readonly flow: number;
    readonly frictionLoss: number;
    readonly frictionLength: number;
  }[];
  readonly fittings: readonly {
    readonly at: string;
    readonly segment: string;
    readonly kind: string;
    readonly c: number;
    readonly loss: number;
  }[];
}

/** Gives a job, as a file, to the command line and reads what it prints; throws what it says when it refuses. */
export async function solvedByCommand(job: unknown): Promise<readonly SolvedSpeed[]> {
  const folder = mkdtempSync(join(tmpdir(), 'gentlebend-'));
  try {
    const file = join(folder, 'worked.gentlebend.json');
    writeFileSync(file, JSON.stringify(job));
    let printed = '';
    let refused = '';
    const code = await main(['solve', file, '--json'], {
      stdout: { write: (text: string) => (printed += text) },
      stderr: { write: (text: string) => (refused += text) },
      env: {},
    });
    if (code !== 0) throw new Error(refused);
    return (JSON.parse(printed) as { schemes: { speeds: SolvedSpeed[] }[] }).schemes.flatMap(
      ({ speeds }) => speeds,
    );
  } finally {
    rmSync(folder, { recursive: true });
  }
}
