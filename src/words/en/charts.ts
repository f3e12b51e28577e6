export const budget = {
  label: (parts: string) => `Pressure by part: ${parts}`,
};

export const tables = {
  working: 'Where each speed works',
  speed: 'Speed',
  air: 'Air',
  totalPressure: 'Total pressure',
  staticPressure: 'Static pressure',
  pressureByAir: (unit: string) => `Total pressure by air, ${unit}`,
  runAsksFor: 'The run asks for',
  alongRun: (unit: string) => `Pressure along the run, ${unit}`,
  place: 'Place',
  fromHood: 'From the hood',
  takes: 'Takes',
  totalAfter: 'Total after',
  staticAfter: 'Static after',
  part: 'Part',
  share: 'Share',
  fanGives: 'The fan gives',
};

export const dock = {
  budget: 'Pressure by part',
  headingAt: (speed: string) => `Charts at ${speed}`,
  heading: 'Charts',
  show: 'Show',
  tables: 'Tables',
  close: 'Close the charts',
  fan: 'Fan and run',
  profile: 'Pressure along the run',
};

export const fan = {
  label: 'Fan pressure against flow at each speed',
  caption: 'Total pressure of the fan; dots: where this scheme makes it work.',
  system: 'what the run asks for',
};

export const profile = {
  label: (length: string) => `Pressure along the run of ${length}, falling to the outside`,
  hood: 'hood',
  outside: (length: string) => `outside, ${length}`,
  total: 'total',
  static: 'static',
};

/** Before anything can be charted. */
export const empty = {
  lead: 'These charts show where the air that you pay for goes. They need a run that can be solved.',
  steps: [
    'Place a hood on the floor sheet.',
    'Draw duct from its collar, leg by leg.',
    'End it with a cap in an outside wall or a roof.',
  ],
  tells: {
    fan: 'The fan’s curve at each speed, and what the run asks for. Where they cross is the air that you get.',
    profile: 'From the collar to the cap, step by step: a long fall at one place is a place to change.',
    budget: 'The same loss sorted by its cause: bends, straight duct, cap and the rest.',
  },
};
