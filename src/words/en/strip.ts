import { plural } from './plural.ts';

export const cautions = {
  label: 'Cautions',
  heading: 'Before anything is built',
  carbonMonoxide: 'Carbon monoxide.',
  carbonMonoxideText:
    'A hood pulls air out of the house. Where a water heater, boiler, furnace, stove or fireplace draws its air from the same house, it can pull flue gas back in. Have the installer test for spillage with every exhaust fan running, and plan the make-up air.',
  grease: 'Grease burns.',
  greaseText:
    "Use smooth metal duct that can be cleaned, with no screw points in the air stream and the clearances that the code and the hood's instructions ask for. Never plastic or foil flexible duct where they forbid it.",
  outdoors: 'Outdoors means outdoors.',
  outdoorsText: 'Never end a kitchen exhaust in an attic, a crawl space or a wall.',
  homes: 'Homes only.',
  homesText:
    'Commercial cooking has its own codes, hoods and fire suppression, and is outside what is computed here.',
};

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
