/** Specific heat of air at constant pressure, J/(kg·K). */
export const CP = 1006;
/** Thermal conductivity of duct wrap, W/(m·K), typical of mineral wool. Common practice. */
export const WRAP_CONDUCTIVITY = 0.04;
/** Heat transfer inside, outside in still air, W/(m2·K). Common practice for planning. */
const INSIDE_FILM = 20;
const OUTSIDE_FILM = 9;

/**
 * Dew point in °C of air at `temperature` °C and relative humidity 0-1, by Magnus with 17.62 and 243.12 °C.
 * Source: WMO form of the Magnus formula, from memory; good to 0.35 K from -45 to 60 °C.
 */
export function dewPoint(temperature: number, humidity: number): number {
  const gamma =
    Math.log(Math.min(1, Math.max(humidity, 1e-6))) + (17.62 * temperature) / (243.12 + temperature);
  return (243.12 * gamma) / (17.62 - gamma);
}

export interface WallLeg {
  /** m */
  readonly length: number;
  /** Inside perimeter, m. */
  readonly perimeter: number;
  readonly hydraulicDiameter: number;
  /** Thickness of insulation, m. */
  readonly insulation: number;
  /** Temperature around the leg, °C. */
  readonly ambient: number;
}

/** Overall heat transfer, W/(m2·K) on the inside surface, with insulation as a cylinder of the duct's size. */
export function overallTransfer(leg: Pick<WallLeg, 'hydraulicDiameter' | 'insulation'>): number {
  const r = leg.hydraulicDiameter / 2;
  const outer = r + leg.insulation;
  const resistance =
    1 / INSIDE_FILM +
    (leg.insulation > 0 ? (r * Math.log(outer / r)) / WRAP_CONDUCTIVITY : 0) +
    r / outer / OUTSIDE_FILM;
  return 1 / resistance;
}

export interface LegHeat {
  readonly inlet: number;
  readonly outlet: number;
  /** Inside surface at the leg's cold end, °C. */
  readonly wall: number;
}

/**
 * Air temperature along one leg, `T(x) = Ta + (T0 - Ta) exp(-U P x / (m cp))`, and the inside surface at its
 * cold end, °C. `massFlow` in kg/s, above 0.
 */
export function alongLeg(leg: WallLeg, inlet: number, massFlow: number): LegHeat {
  const u = overallTransfer(leg);
  const outlet =
    leg.ambient + (inlet - leg.ambient) * Math.exp((-u * leg.perimeter * leg.length) / (massFlow * CP));
  const wall = outlet - (u / INSIDE_FILM) * (outlet - leg.ambient);
  return { inlet, outlet, wall };
}

/**
 * Least insulation that keeps the inside surface above the dew point, m, by bisection up to 0.15 m;
 * null where even that does not do.
 */
export function insulationAgainstDew(
  leg: WallLeg,
  inlet: number,
  massFlow: number,
  dew: number,
): number | null {
  const wallAt = (insulation: number) => alongLeg({ ...leg, insulation }, inlet, massFlow).wall;
  if (wallAt(0) > dew) return 0;
  let low = 0;
  let high = 0.15;
  if (wallAt(high) <= dew) return null;
  while (high - low > 1e-5) {
    const mid = (low + high) / 2;
    if (wallAt(mid) > dew) high = mid;
    else low = mid;
  }
  return high;
}
