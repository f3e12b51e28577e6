import { formatNumber, plainStyle, quantity, type System } from '../../units/index.ts';

/** Pressures of one column, in figures that have the same decimals and so stand with their points in line. */
export function alikePressures(values: readonly (number | null)[], units: System): string[] {
  const decimals = Math.max(
    0,
    ...values.map((value) => {
      const figure = value === null ? '' : quantity('pressure', value, units, plainStyle).figure;
      return figure.split('.')[1]?.length ?? 0;
    }),
  );
  return values.map((value) =>
    value === null ? '–' : formatNumber(quantity('pressure', value, units).value, decimals),
  );
}
