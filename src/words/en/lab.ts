import { strong } from '../strong.ts';

export const frame = {
  heading: 'Bend lab',
  made: (turn: string) => `${turn} is made as in the lab. Undo takes it back.`,
  pages: {
    turn: 'One turn',
    kinds: 'All kinds',
    two: 'Two 45s',
    run: 'A run of bends',
    lessons: 'Lessons',
  },
  guessFirst: 'Guess first',
  close: 'Close the bend lab',
  turn: 'Turn',
  bench: 'Invented bench of the lab',
  myDrawing: (turn: string) => `My drawing: ${turn}`,
  speed: 'Speed',
  foot: 'Every figure is solved for the run that is drawn. Tabled losses hold for clean duct with straight runs beside the bend. Local code, the hood’s instructions and whoever is licensed decide what is built.',
  endPresenting: 'End presenting',
  present: 'Present',
};

export const guess = {
  skip: 'Show it without a guess',
  reveal: 'Reveal',
  judged: (said: string, is: string, judgement: string) =>
    `You said ${strong(said)}; it is ${strong(is)}. ${judgement}`,
};

export const kinds = {
  question: (kind: string, flow: string) =>
    `${kind} lets ${flow} out. How much does the worst of all kinds let out?`,
  lead: 'Each at its usual radius, all drawn to one scale; from the gentlest on the air to the dearest.',
  picture: (kind: string) => `${kind}, true to scale`,
  radius: (ratio: string) => `r/D ${ratio}`,
  noRadius: 'no radius',
  c: 'C',
  equivalent: 'Equivalent',
  air: 'Air',
  lookAt: 'Look at it',
};

export const lesson = {
  picture: (title: string) => `${title}. Drawn to scale, seen from the side.`,
  step: (lesson: string, step: number, steps: number) => `${lesson}: step ${step} of ${steps}`,
  makeChange: 'Make the change',
  show: 'Show it',
  next: 'Next step',
  toEnd: 'To the end',
  back: 'Back',
  all: 'All lessons',
  air: 'Air delivered',
  pressure: 'The fan works against',
  fastest: 'Fastest air',
  sound: 'Sound at the cook',
  wasBefore: (value: string) => `${value} before`,
  caption: (uncertainty: string) => `At the highest speed; the sound is an estimate, ±${uncertainty} dB`,
  before: 'Before',
  now: 'Now',
  asDrawn: 'As drawn',
  change: 'Change',
  remember: 'Remember.',
  run: (lesson: string, step: string) => `The run of the lesson ${lesson}: ${step}`,
  end: (lesson: string) => `What to take home from “${lesson}”`,
  range: 'How far this holds',
  again: 'From the beginning',
};

export const lessons = {
  lead: 'Three lessons on invented runs, drawn at one scale. Each step asks for a guess, makes a change, and solves what it does. This browser remembers the step where a lesson was left, and nothing of what was guessed.',
  begin: (lesson: string) => `Begin “${lesson}”`,
  goOn: (step: number, lesson: string) => `Go on with step ${step} of “${lesson}”`,
  length: (steps: string, minutes: number) => `${steps}, about ${minutes} minutes with some talk.`,
  taken: 'Taken to its end.',
  foretold: 'What the apprentice foretells',
  comesOut: 'What comes out',
  withheld:
    'Air delivered, the pressure that the fan works against, the fastest air and the sound, before and after each change. The figures stand here once the lesson was taken, so that no guess is spoilt.',
  first: 'Air at first',
  worst: 'At its worst',
  last: 'At the end',
};

export const turn = {
  picture: (degrees: string) => `The turn of ${degrees}°, true to scale`,
  gone: 'There is no turn here any more.',
  radius: (radius: string, setback: string) =>
    `Centre-line radius ${strong(radius)}, taken from each leg ${strong(setback)}. Pull the ring, or move the slider.`,
  mitre: 'A mitre has no radius: its corner is cut square.',
  noRoom: 'The legs beside this turn have no room for such an arc.',
  kind: 'Kind of bend',
  none: 'none',
  ratio: 'Radius over diameter, r/D',
  question: 'How much air gets out with the turn made like this?',
  apply: 'Apply to my drawing',
  loss: 'Pressure lost in it',
  soundNote: (change: string, uncertainty: string) => `${change}; estimate, ±${uncertainty} dB`,
  asDrawn: 'as drawn',
  against: (change: string) => `${change} against as drawn`,
  curve: {
    label: (points: string) => `Loss coefficient over r/D. ${points}`,
    loss: 'C',
    ratio: (most: string) => `r/D ${most}`,
    caption: 'The loss coefficient of this kind over its radius, the rest of the run as it is.',
  },
};

export const run = {
  about: (length: string, kind: string) =>
    `${length} of duct on an invented bench, with square bends on it: ${kind}, as chosen on the page One turn.`,
  aboutRadius: (length: string, kind: string, ratio: string) =>
    `${length} of duct on an invented bench, with square bends on it: ${kind}, r/D ${ratio}, as chosen on the page One turn.`,
  picture: (length: string, bends: string) => `A run of ${length} with ${bends}`,
  noRoom: 'The legs of this run have no room for so large an arc.',
  bends: 'Bends on the run',
  question: (flow: string, bends: string) => `Straight, ${flow} get out. How much with ${bends}?`,
  straight: 'Straight',
  against: (change: string) => `${change} against the straight run`,
  alone:
    'Each bend is counted as if it stood alone. Bends closer than a few diameters disturb one another, and may cost more or less than this sum.',
};

export const two = {
  gone: 'There is no turn to share here.',
  lead: (angle: string, half: string, apart: string) =>
    `The corner as one ${angle} bend, and shared between two of ${half} of the same make, ${apart} apart.`,
  one: (angle: string) => `One ${angle}`,
  question: (flow: string) => `One bend lets ${flow} out. How much do the two let out?`,
  two: (angle: string) => `Two of ${angle}`,
  noDifference: 'Here it makes no difference worth the work.',
  gains: (change: string) => `Two bring ${change}: they are worth it where the corner is hard.`,
  costs: (change: string) =>
    `Two take ${change} more: half the angle has more than half the loss, so a bend that is gentle already stays one.`,
  alone:
    'Each bend is counted by its own table, as if straight duct stood on both sides; two bends this close may cost somewhat more or less than their sum.',
  loss: 'Pressure lost',
  sound: 'Sound',
};

export const sound = {
  change: (change: string) => `${change} dB`,
  level: (level: string) => `${level} dBA`,
  noChange: 'no change',
};
