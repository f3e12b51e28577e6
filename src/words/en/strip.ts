import { plural } from './plural.ts';

/** What the button says that shows the cautions. */
export const cautions = 'Cautions';

export const needed = {
  needs: 'needs',
};

export const speed = {
  label: (name: string) => `Results at ${name}`,
  of: 'of',
  rated: 'rated',
  totalPressure: 'total pressure',
  fastest: 'fastest',
  cook: 'cook',
  house: 'house',
};

export const sound = {
  decibels: (level: string, uncertainty: string) => `${level} dBA ±${uncertainty}`,
  sones: (shown: string, sones: number) => `${shown} ${plural(sones, { one: 'sone', other: 'sones' })}`,
};
