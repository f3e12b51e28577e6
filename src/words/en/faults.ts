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
  bestFirst:
    'Best first: the air at the hood and both static pressures, at two speeds or more. None of them needs a ladder outdoors.',
  precision:
    'Each value is taken to be good to 5 % (common practice). With readings as good as that at every speed of our two example routes, these three put a cause that was planted among the first two in 19 of 20; the air and the pressure at the collar alone in 16 of 20.',
  precisionOfSound: 'Sound is taken to be good to 5 dB, the same at every speed.',
  hoodAir: 'Air at the hood',
  capAir: 'Air at the cap',
  collarStatic: 'Static at the collar',
  capStatic: 'Static before the cap',
  sound: 'Sound at the cook',
  hoodAirHow: 'a flow hood, or a vane anemometer moved evenly over the whole filter, times the free area.',
  capAirHow: 'a powered flow hood or a rotating-vane anemometer over the opening, from a safe stand.',
  collarStaticHow:
    'a manometer with its tube in a small hole in the duct a hand above the collar, square to the air, its other side open to the kitchen; close the hole with metal tape afterwards.',
  capStaticHow:
    'the same in the last straight duct, a hand before the cap and its flap, from the attic or between the joists, with a long tube whose other side is open to the kitchen.',
  soundAtHead: "Sound at the cook's head",
  soundHow: 'a sound level meter set to A, slow, where the cook stands.',
  heading: 'What was measured',
  speed: 'At speed',
  at: (speed: string) => `Measured at ${speed}`,
  list: 'Measurements',
  atSpeed: (what: string, speed: string) => `${what}, ${speed}`,
  takeOut: (what: string) => `Take out ${what}`,
  how: 'What to measure with',
  airRefused: 'Air that was measured is above 0.',
};

export const results = {
  verdicts: {
    asDrawn: 'What was measured is what the drawing gives: nothing has to be wrong to explain it.',
    toldApart: 'One cause explains the measurements clearly better than the others that were tried.',
    cannotTell: 'These measurements cannot tell the first causes apart.',
    nothingFits:
      'No single cause explains these measurements. Check the readings and the drawing, or look for two causes at once.',
  },
  first: (cause: string, share: string) => `${cause}: ${share}, first among the causes.`,
  underOne: 'under 1 %',
  label: 'Causes',
  heading: 'What the measurements say',
  byRank: 'Causes by rank',
  showAll: (causes: number) => `Show all ${causes}`,
  ranking:
    'Ranked by how well each cause explains every measurement, over all the places and sizes that it could have, and by how often it is met with (common practice). Each is shown at its likeliest. A rank is not a proof: look before anything is opened.',
  unexplained: 'Loss that the drawing does not explain',
  speed: 'Speed',
  measured: 'Measured',
  drawn: 'Drawn',
  loss: 'Loss',
  c: 'C',
  sides: (speed: string, fan: string, duct: string) =>
    `By the gauge at the collar, at ${speed}: ${fan} in the fan or before it, ${duct} after it or in the house.`,
  nextToNothing: 'next to nothing',
  noNext:
    'No further measurement would tell the first of them apart: looking does. See what to look at below.',
  next: (what: string) => `Measure next: ${what}.`,
  wouldMeasure: 'It would measure',
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
