import { counted } from './plural.ts';

export const smallCap = {
  title: 'Small cap',
  about: 'A good duct with a poor end: the cap outside, which nobody looks at.',
  job: 'Invented lesson: small cap',
  fair: 'A fair cap',
  fairTold:
    'A short run with one gentle turn. The cap’s free opening is as large as the duct, and one flap keeps the weather out.',
  fairTask: 'Look at the drawing and guess the air that gets out.',
  fairAsk: 'How much air gets out at the highest speed?',
  fairPoint: 'Even a fair cap costs: the air has to lift the flap, turn, and leave with all of its velocity.',
  small: 'The common small one',
  smallTold:
    'The cap off the shelf fits over the duct, but its free opening is smaller than the duct it stands on. From the street both look alike.',
  smallTask: 'Guess the air with the small cap.',
  smallAsk: 'How much air gets out through the small cap?',
  smallPoint: 'Measure the free opening of a cap, not its collar.',
  worth: 'As much as how much duct?',
  worthTold: 'The loss of a cap can be told in lengths of straight duct, as that of a bend can.',
  worthTask: 'Guess how much straight duct costs as much as this small cap.',
  worthAsk: 'The small cap costs as much as how much straight duct?',
  worthPoint: 'A poor cap can outweigh the whole run behind it. Look outside first.',
  wide: 'A larger duct will not help',
  wideTold:
    'Somebody opens the wall and puts in a duct two inches wider, and keeps the very same cap with the very same opening.',
  wideTask: 'Guess the air with the wide duct and the old cap.',
  wideAsk: 'How much does the wide duct bring?',
  widePoint: 'Work on the part that takes the most, or the work is for nothing.',
  stuck: 'A flap that sticks',
  stuckTold:
    'The duct has its first size again. Paint, grease or a nest keeps the flap from opening more than about a third.',
  stuckTask: 'Guess the air that gets past the flap that sticks.',
  stuckAsk: 'How much air gets past the stuck flap?',
  stuckPoint: 'A hood that was good once and is weak now: go outside, switch it on, and watch the flap.',
  cure: 'The cure',
  cureTold: 'A new cap with an opening as large as the duct and a flap that moves freely.',
  cureTask: 'Guess the air with the cap changed. You have met this run before.',
  cureAsk: 'How much air gets out with the good cap?',
  curePoint: 'The cheapest large gain on many houses is done from a ladder, with nothing opened up.',
  limits:
    'Caps are built up from contraction, flap, turn and exit by general coefficients; a measured figure of the very cap is better where there is one. Wind on the wall is not counted. Working outside on a ladder, near gas vents or wiring, is for those who may; where a fuel-burning appliance shares the house, more air out needs air in. Hood and fan are invented: the differences teach, the figures are no promise for a real kitchen.',
};

export const squeezedDuct = {
  title: 'Squeezed duct',
  about: 'A duct smaller than the collar: in one leg, in the whole run, and in one short piece.',
  job: 'Invented lesson: squeezed duct',
  right: 'The run at its right size',
  rightTold: 'One gentle turn, and duct as wide as the collar all the way to the wall.',
  rightTask: 'Look at the drawing and guess the air that gets out.',
  rightAsk: 'How much air gets out at the highest speed?',
  rightPoint: 'Duct of the collar’s size is where every comparison starts.',
  lastLeg: 'Squeeze the last leg',
  lastLegTold:
    'A smaller duct was at hand for the last leg, three quarters as wide. It has little more than half the area, so the same air has to go nearly twice as fast there.',
  lastLegTask: 'Guess the air with the last leg and its cap squeezed.',
  lastLegAsk: 'How much air gets out now?',
  lastLegPoint:
    'Loss goes with the square of the velocity, and the area with the square of the diameter: a little narrower is a lot worse.',
  whole: 'Squeeze the whole run',
  wholeTold: 'Somebody reduces right at the collar and runs the small duct all the way.',
  wholeTask: 'Guess the air with the whole run squeezed.',
  wholeAsk: 'How much air gets out of the small duct?',
  wholePoint:
    'A duct never goes below the size of the collar: the instructions of hoods say so, and the local code may forbid it.',
  fast: 'How fast it blows',
  fastTold:
    'The air that is left goes through the small duct faster than it went through the large one. Fast air hisses, and is heard in the kitchen.',
  fastTask: 'Narrow the whole run once more, and guess how fast the air now goes where it is fastest.',
  fastAsk: 'How fast does the air go where it is fastest?',
  fastPoint:
    'Less air can still be louder air. When a hood hisses and does not draw, look for the narrow place.',
  short: 'Only one short piece',
  shortTold:
    'The run is wide again but for one piece: the first leg was left small because a wide duct would not pass the cabinet.',
  shortTask: 'Guess the air with the first leg alone left squeezed.',
  shortAsk: 'How much air gets past one squeezed leg?',
  shortPoint:
    'One squeezed place holds back the whole run. A gradual cone softens it; only the full size cures it.',
  limits:
    'Friction is that of clean, straight, airtight galvanized duct; grease, dents and leaks are not counted. Changes of size are cones of the usual angle. The velocity is the mean over the section, and the sound is an estimate that ranks routes. Hood and fan are invented: the differences teach, the figures are no promise for a real kitchen.',
};

export const tightTurns = {
  title: 'Tight turns',
  about: 'The same duct, the same fan: only the way its three turns are made changes.',
  job: 'Invented lesson: tight turns',
  look: 'Look at the run',
  lookTold:
    'A hood blows into a duct of its collar’s size. Three smooth turns, each with a centre-line radius of one and a half diameters, lead to a cap in the wall.',
  lookTask:
    'Look at the drawing and at what the hood is rated to move. Then say how much of that you think gets out.',
  lookAsk: 'How much air gets out at the highest speed?',
  lookPoint:
    'The rated airflow is what the fan moves with no duct on it. Every duct takes some of it away; the question is how much.',
  tighten: 'Tighten the turns',
  tightenTold:
    'The same three turns, bent to half of one diameter: the inside of the bend is almost a corner. Air cannot follow it, leaves the wall and whirls.',
  tightenTask: 'Say what is left of the air. Then make the turns tight.',
  tightenAsk: 'How much air gets out now?',
  tightenPoint:
    'Tightening a bend costs more than shortening the duct can save. The radius of the centre line over the diameter, r/D, tells the most about a bend.',
  square: 'Cut them square',
  squareTold:
    'A mitred corner has no radius at all. It is the quickest to make, and it needs the least room.',
  squareTask: 'Guess how much straight duct one such corner is worth. Then cut the corners.',
  squareAsk: 'One mitred corner costs as much as how much straight duct?',
  squarePoint: 'One square corner can cost as much as all the straight duct of a usual run.',
  mend: 'Mend one of three',
  mendTold: 'There is often room for one gentle turn only. The loss of the others stays.',
  mendTask: 'Guess the air with the first turn gentle again and the two others still square.',
  mendAsk: 'How much air gets out with one turn mended?',
  mendPoint:
    'Each bend takes its own part, so each one mended gives its own part back. Begin with the worst, not with the easiest.',
  share: 'Two shallow turns for one',
  shareTold:
    'Where a square corner stands, two bends of 45° with a short leg between them often fit: the corner is cut off.',
  shareTask: 'Guess the air with the second corner shared between two smooth 45° bends.',
  shareAsk: 'How much air gets out with the corner cut off?',
  sharePoint:
    'Two 45s are the remedy for a square corner where a long radius does not fit. In place of a bend that is gentle already they bring nothing: half the angle has more than half the loss.',
  limits:
    'Each bend is counted with its own tabled loss, as if straight duct stood before and after it. Bends closer together than a few diameters disturb one another, and may cost more or less than their sum. Slip joints, beads and dents are not counted. Hood, fan and house are invented: the differences teach, the figures are no promise for a real kitchen.',
};

export const bench = {
  notes: 'Invented for teaching: no real kitchen, no real hood.',
  oneTurn: 'Invented bench: one turn',
  turns: (count: number) => `Invented bench: ${counted(count, { one: 'bend', other: 'bends' })}`,
};

export const trial = {
  noFan: 'No fan runs at this speed.',
};

export const guess = {
  hardlyAny: 'You expected hardly any change, as most people do at first.',
  spotOn: 'Spot on. Few people feel air this well.',
  veryClose: (off: string) => `Very close: ${off}.`,
  otherWay: (off: string) => `It goes the other way, which surprises most people the first time: ${off}.`,
  rightWay: (off: string) => `The right way; the size surprises most people: ${off}.`,
  remember: (off: string) => `Worth remembering: ${off}. Air does not behave as the hand expects.`,
  off: (percent: number) => `${percent} % off`,
  farOff: 'more than 100 % off',
  close: (off: string) => `Close: ${off}.`,
  closeRightWay: (off: string) => `Close: ${off}, and the right way.`,
};
