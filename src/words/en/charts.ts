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
  takesIn: (unit: string) => `Takes, ${unit}`,
  inLine: (place: string) => `${place}: part in line`,
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
  inAll: (pressure: string) => `${pressure} in all`,
};

export const fan = {
  label: (works: string) => `Fan pressure against flow at each speed. ${works}`,
  at: (speed: string, flow: string, pressure: string) => `${speed}: ${flow} against ${pressure} in all`,
  caption: 'Total pressure of the fan at each speed; dots: where this scheme makes it work.',
  alone: 'Total pressure of the fan at each speed, before any run stands against it.',
  run: 'run',
  crossing: 'The air that gets out: where the fan’s curve crosses',
  system: 'what the run asks for',
};

export const profile = {
  label: (length: string) => `Pressure along the run of ${length}, falling to the outside`,
  hood: 'hood',
  outside: (length: string) => `outside, ${length}`,
  total: 'total',
  static: 'static',
  takes: (place: string, pressure: string, share: string) =>
    `${place} takes ${pressure}, ${share} of it all.`,
  totalPressure: 'Total',
  staticPressure: 'and static pressure.',
  point: 'Point at a fall to see what takes it.',
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
