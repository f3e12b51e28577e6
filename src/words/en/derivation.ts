/** How a figure's derivation is told, beside what the derivation itself says. */
export const sourceWords = {
  found: 'found in the source',
  memory: 'from memory',
  'common practice': 'common practice',
  assumption: 'assumption',
};

export const text = {
  formula: 'formula',
  with: 'with',
  source: 'source',
  note: 'note',
};

/** What each figure is, without its place. */
export const figures = {
  density: 'Air density',
  viscosity: 'Air viscosity',
  flow: 'Air delivered: the balance of fan and run',
  'rated flow': 'Rated flow',
  'share of rated': 'Share of the rated flow',
  'total pressure': "Total pressure of the hood's fan",
  'static pressure': 'Static pressure at the collar',
  velocity: 'Velocity',
  'velocity pressure': 'Velocity pressure',
  'Reynolds number': 'Reynolds number',
  'friction factor': 'Friction factor',
  'friction length': 'Length charged with friction',
  'friction loss': 'Friction loss',
  'loss per metre': 'Friction loss per metre',
  'fitting loss': 'Loss of a fitting',
  coefficient: 'Loss coefficient',
  'equivalent length': 'Equivalent length',
  'share of pressure': "Share of the fan's pressure",
  'booster pressure': 'Total pressure of a fan in the run',
  'house pressure': 'Pressure of the house against outdoors',
  'house leakage': 'Air in through the leaks of the house',
  'make-up air': 'Make-up air that holds the house at its limit',
  'sound at the cook': "Sound at the cook's head",
  'sound outside': 'Sound outside beneath the cap',
  'inlet temperature': 'Air where it enters a leg',
  'outlet temperature': 'Air where it leaves a leg',
  'wall temperature': "Inside of a leg's wall at its coldest",
  'dew point': 'Dew point of the kitchen air',
  'required airflow': 'Airflow that the cooktop asks for',
};
