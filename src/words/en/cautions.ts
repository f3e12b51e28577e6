export interface Caution {
  /** With its full stop: it begins the sentence where both stand in one line. */
  readonly title: string;
  readonly text: string;
}

export const heading = 'Before anything is built';

export const estimate: Caution = {
  title: 'An estimate for planning, and no approval.',
  text: 'Local codes, the instructions of the hood, the fan and the appliances, and a licensed practitioner decide.',
};

export const carbonMonoxide: Caution = {
  title: 'Carbon monoxide.',
  text: 'A hood pulls air out of the house. Where a water heater, boiler, furnace, stove or fireplace draws its air from the same house, it can pull flue gas back in. Have the installer test for spillage with every exhaust fan running, and plan the make-up air.',
};

export const grease: Caution = {
  title: 'Grease burns.',
  text: "Use smooth metal duct that the code allows and that can be cleaned, with no screw points in the air stream and the clearances that the code and the hood's instructions ask for. Never plastic or foil flexible duct where they forbid it.",
};

export const outdoors: Caution = {
  title: 'Outdoors means outdoors.',
  text: 'Never end a kitchen exhaust in an attic, a crawl space, a soffit or a wall.',
};

export const homes: Caution = {
  title: 'Homes only.',
  text: 'Commercial cooking has its own codes, hoods and fire suppression, and is outside what is computed here.',
};

/** What the figures are not and what can hurt someone, wherever results are shown, printed or sent. */
export const all: readonly Caution[] = [estimate, carbonMonoxide, grease, outdoors, homes];
