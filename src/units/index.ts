import type { Parsed, System } from './parsed.ts';
import { parseQuantity, type QuantityKind, quantity } from './quantity.ts';

export * from './constants.ts';
export { formatDay, formatMoment } from './date.ts';
export {
  formatDiameter,
  formatLength,
  parseDiameter,
  parseLength,
} from './length.ts';
export { locales } from './locales.ts';
export {
  formatLarge,
  formatNumber,
  formatPercent,
  formatSignificant,
  formatTrimmed,
  parseNumber,
} from './number.ts';
export type { Parsed, System } from './parsed.ts';
export { parseQuantity, type QuantityKind, quantity, unitOf } from './quantity.ts';
export { isStep, parseDirection, parseRelativeLength } from './relative.ts';
export {
  currentStyle,
  type InchStyle,
  inchStyles,
  inStyle,
  isLocale,
  type MetricLength,
  metricLengths,
  onStyle,
  plainChoice,
  plainStyle,
  type Style,
  type StyleChoice,
  setStyle,
  styleOf,
} from './style.ts';

const parser =
  (kind: QuantityKind) =>
  (text: string, system: System): Parsed =>
    parseQuantity(kind, text, system);
const formatter =
  (kind: QuantityKind) =>
  (si: number, system: System): string =>
    quantity(kind, si, system).text;

/** m3/s from `300 cfm`, `510 m³/h`, `140 L/s`, `0.14 m3/s`. */
export const parseFlow = parser('flow');
/** m3/s in whole cfm or whole m³/h. */
export const formatFlow = formatter('flow');

/** Pa from `0.25 in w.g.`, `0.25 in. wc`, `.25"`, `62 Pa`, `6 mmH2O`. */
export const parsePressure = parser('pressure');
/** Pa as in w.g. with two decimals (three below 0.1) or Pa (one decimal below 10). */
export const formatPressure = formatter('pressure');

/** m/s from `1200 fpm`, `6.1 m/s`. */
export const parseVelocity = parser('velocity');
/** m/s in fpm to the nearest 10, or m/s with one decimal. */
export const formatVelocity = formatter('velocity');

/** Pa/m from `0.1 in w.g./100 ft`, `0.8 Pa/m`. */
export const parseLossRate = parser('lossRate');
/** Pa/m in in w.g./100 ft or Pa/m. */
export const formatLossRate = formatter('lossRate');

/** °C from `70 F`, `21 °C`. */
export const parseTemperature = parser('temperature');
/** °C in whole °F, or °C with one decimal. */
export const formatTemperature = formatter('temperature');

/** Degrees from `45`, `45°`, `22.5 deg`. */
export const parseAngle = parser('angle');
/** Degrees with at most one decimal: `22.5°`. */
export const formatAngle = (degrees: number): string => quantity('angle', degrees, 'metric').text;

/** m2 from `50 sq in`, `320 cm2`. */
export const parseArea = parser('area');
/** m2 in sq in with one decimal, or whole cm². */
export const formatArea = formatter('area');

/** m of duct, real or equivalent, in feet with one decimal or m with two: `18.4 ft`, `5.61 m`. */
export const formatRun = formatter('run');
