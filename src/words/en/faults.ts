export const panel = {
  heading: 'Find a fault',
  body: 'Measurements and causes',
  empty: {
    title: 'A fault is found by comparing',
    text: 'What you measure is held against what the drawn route would give.',
    draw: 'Draw the route as far as it is known: the hood, its duct, and where it ends.',
    measure: 'Measure at the hood: the air, a pressure in the duct, or how much louder it has become.',
    enter: 'Enter it here. The causes that would explain it are ranked, with what to look at next.',
  },
  safety:
    'Ladders and roofs kill: measure from the inside where you can, and leave the roof to people who are secured on it. Where anything burns fuel in the house, a licensed technician tests for spillage of carbon monoxide before and after the hood is changed.',
  comparing: 'Comparing…',
  find: 'Find the cause',
  measurementsChanged: 'Measurements have changed since.',
  drawingChanged: 'The drawing has changed since.',
  ranked: 'Causes are ranked.',
};

export const measured = {
  precision:
    'One speed tells little: two or more, and both air and pressure, tell causes apart. Each value is taken to be good to 5 % (common practice).',
  precisionWithSound:
    'One speed tells little: two or more, and both air and pressure, tell causes apart. Each value is taken to be good to 5 % (common practice; sound to 5 dB).',
  hoodAir: 'Air at the hood',
  capAir: 'Air at the cap',
  collarStatic: 'Static at the collar',
  sound: 'Sound at the cook',
  hoodAirHow: 'a flow hood, or a vane anemometer moved evenly over the whole filter, times the free area.',
  capAirHow: 'a powered flow hood or a rotating-vane anemometer over the opening, from a safe stand.',
  collarStaticHow:
    'a manometer with its tube in a small hole in the duct a hand above the collar, square to the air, its other side open to the kitchen; close the hole with metal tape afterwards.',
  soundAtHead: "Sound at the cook's head",
  soundHow: 'a sound level meter set to A, slow, where the cook stands.',
  heading: 'What was measured',
  speed: 'At speed',
  at: (speed: string) => `Measured at ${speed}`,
  list: 'Measurements',
  takeOut: (what: string) => `Take out ${what}`,
  how: 'What to measure with',
  airRefused: 'Air that was measured is above 0.',
};

export const results = {
  wouldMake: (one: string, value: string, other: string, otherValue: string) =>
    `${one} would make it ${value}, ${other} ${otherValue}`.replace(/\.?$/, '.'),
  verdicts: {
    asDrawn: 'What was measured is what the drawing gives: nothing has to be wrong to explain it.',
    toldApart: 'One cause explains the measurements clearly better than the others that were tried.',
    cannotTell: 'These measurements cannot tell the first causes apart.',
    nothingFits:
      'No single cause explains these measurements. Check the readings and the drawing, or look for two causes at once.',
  },
  first: (cause: string, percent: string) => `First among the causes: ${cause}, ${percent} %.`,
  label: 'Causes',
  heading: 'What the measurements say',
  byRank: 'Causes by rank',
  showAll: (causes: number) => `Show all ${causes}`,
  ranking:
    'Ranked by how well each cause, solved for real at its best size, meets every measurement, and by how often it is met with (common practice). A rank is not a proof: look before anything is opened.',
  unexplained: 'Loss that the drawing does not explain',
  speed: 'Speed',
  measured: 'Measured',
  drawn: 'Drawn',
  loss: 'Loss',
  c: 'C',
  sides: (fan: string, duct: string) =>
    `By the gauge at the collar, ${fan} of the last is the fan's own or lost before it, and ${duct} is lost after it or to the house.`,
  noNext:
    'No further measurement would tell the first of them apart: looking does. See what to look at below.',
  next: (what: string) => `Measure next: ${what}.`,
  measures: 'It measures',
  nothingWrong: 'Nothing wrong',
  misses: (times: string) => `Misses the measurements by ${times} times their error.`,
  asDrawn: (fit: string) => `The run as drawn. ${fit}`,
  look: 'Look.',
  putRight: 'Put right.',
  air: (speed: string, now: string, after: string) =>
    `At ${speed} the air at the cap would go from ${now} to ${after}.`,
  showPlace: 'Show the place',
  madeAsFound: 'A scheme as found was made.',
  makeAsFound: 'Make a scheme as found',
};

export const diagnosis = {
  measureFirst: 'Enter at least one measurement.',
  nonePredicted: 'None of the measurements can be predicted from what is drawn.',
};

export const found = {
  closed: (share: string) => `${share} of the opening closed`,
  smaller: (share: string) => `${share} smaller across`,
  across: (found: string, drawn: string) => `about ${found} across instead of ${drawn}`,
  hole: (area: string) => `a hole of about ${area}`,
  holeShare: (share: string) => `a hole of ${share} of the duct`,
  slower: (share: string) => `${share} slower than rated`,
  tighter: (found: string, drawn: string) =>
    `about ${found} air changes an hour at 50 Pa instead of ${drawn}`,
  house: 'the house',
  run: 'the run',
  windowOpen: ', with a window wide open',
  filtersOut: ', with the filters out',
  probes: {
    hoodAir: 'air at the hood',
    capAir: 'air at the cap',
    collarStatic: 'static pressure at the collar',
    ductStatic: (place: string) => `static pressure in the duct just before ${place}`,
    housePressure: 'pressure of the kitchen against outdoors',
    sound: "sound at the cook's head",
  },
  probe: (what: string, speed: string, how: string) => `${what} at ${speed}${how}`,
  asFound: (name: string) => `${name}, as found`,
};
