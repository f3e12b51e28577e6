/**
 * Exact definitions of the units people use, in SI. Sources: the inch, the pound and the pressure of
 * a column of water at 1000 kg/m3 under standard gravity are exact by definition (international yard
 * and pound agreement of 1959; standard gravity 9.80665 m/s2 of the 3rd CGPM, 1901; from memory).
 */

/** m; exact. */
export const INCH = 0.0254;
/** m; exact. */
export const FOOT = 12 * INCH;
/** m/s2; exact. */
const STANDARD_GRAVITY = 9.80665;
/** Conventional inch of water column (4 °C, 1000 kg/m3), Pa: 249.08891. */
export const INCH_OF_WATER = INCH * 1000 * STANDARD_GRAVITY;
/** Conventional millimetre of water column, Pa: 9.80665. */
export const MILLIMETRE_OF_WATER = STANDARD_GRAVITY;
/** Cubic foot a minute, m3/s; exact: 0.0004719474432. */
export const CFM = FOOT ** 3 / 60;
/** Foot a minute, m/s; exact: 0.00508. */
export const FPM = FOOT / 60;
/** Inch of water gauge a hundred feet, Pa/m. */
export const INCH_OF_WATER_PER_100_FT = INCH_OF_WATER / (100 * FOOT);
/** International-table British thermal unit an hour, W; 1055.05585262 J / 3600 s (from memory). */
export const BTU_PER_HOUR = 1055.05585262 / 3600;
