export const value = {
  missing: 'is missing',
  wrongKind: (expected: string, found: string) => `must be ${expected}, not ${found}`,
  notOneOf: (values: string, found: string) => `must be one of ${values}, not ${found}`,
  unknownKind: (found: string) => `must be of a known kind, not ${found}`,
  notBut: (what: string, found: string) => `${what}, not ${found}`,
  wholeNumber: 'a whole number',
  list: 'a list',
  text: 'text',
  withArticle: (kind: string) => (/^[aeiou]/.test(kind) ? `an ${kind}` : `a ${kind}`),
  atMost: {
    plain: (most: string) => `must be at most ${most}`,
    number: (most: string, found: string) => `must be at most ${most}, not ${found}`,
    characters: (most: string) => `must be at most ${most} characters long`,
    entries: (most: string) => `must be at most ${most} entries long`,
  },
  atLeast: {
    plain: (least: string) => `must be at least ${least}`,
    number: (least: string, found: string) => `must be at least ${least}, not ${found}`,
    characters: (least: string) => `must be at least ${least} characters long`,
    entries: (least: string) => `must be at least ${least} entries long`,
  },
  moreThan: {
    plain: (bound: string) => `must be more than ${bound}`,
    number: (bound: string, found: string) => `must be more than ${bound}, not ${found}`,
  },
};

export const integrity = {
  twice: (id: string) => `the id "${id}" is used twice`,
  renamed: (id: string, fresh: string) => `the id "${id}" was used twice; this one is now "${fresh}"`,
  sameName: (name: string) => `two speeds are called "${name}"`,
  and: ' and ',
  mustRise: 'the flow must be more than at the point before',
  noSpeed: (name: string) => `no speed "${name}" of this hood that leads to a curve`,
  mustBeBelow: 'must be below "max" in every direction',
  exchanged: 'the corners were the wrong way round and are exchanged',
  mustHold: 'must hold the picture itself (data:image/…); nothing is fetched from elsewhere',
  underlayDropped:
    'the underlay was dropped: it does not hold its picture, and nothing is fetched from elsewhere',
  noBlock: (id: string) => `no block or exit "${id}"`,
  noNode: (id: string) => `no node "${id}"`,
  dimensionDropped: (id: string, why: string) => `the dimension "${id}" was dropped: ${why}`,
  missing: 'is missing',
  noHood: (id: string) => `no hood "${id}"`,
  segmentDropped: (id: string, why: string) => `the segment "${id}" was dropped: ${why}`,
  sameEnds: (id: string) => `it begins and ends at the same node "${id}"`,
  notInCatalogue: (what: string, id: string, known: string) =>
    `no ${what} "${id}" in the catalogue (there are: ${known})`,
  noneGiven: (ways: string) => `needs exactly one of ${ways}; none is given`,
  severalGiven: (ways: string, given: string) => `needs exactly one of ${ways}; ${given} are given`,
  kinds: { bend: 'bend', cap: 'cap', material: 'material', part: 'part' },
};

export const json = {
  expected: (what: string, found: string) => `expected ${what}, found ${found}`,
  name: 'a name in double quotes',
  value: 'a value',
  end: 'the end of the file',
  commaOr: (close: string) => `"," or "${close}"`,
  openString: 'a string that is not closed or holds a bad escape',
  text: 'text',
};

export const version = {
  noObject: 'this is not a Gentlebend job: the file holds no object',
  otherFormat: 'this is not a Gentlebend job (expected "gentlebend")',
  wholeNumber: 'must be a whole number from 1',
  newer: (version: number, known: number) =>
    `the file is of version ${version} and this program reads up to version ${known}; open it with a newer Gentlebend`,
  noWay: (from: number, to: number) => `no way is known from version ${from} to ${to}`,
};

export const read = {
  place: (line: number, column: number) => `line ${line}, column ${column}`,
  notAJob: (place: string, what: string) => `this is not a job file: ${place}: ${what}`,
  brought: (from: number, to: number) => `brought from version ${from} to ${to}`,
};

export const repair = {
  underlayDropped: 'the underlay was dropped: it cannot be read',
  clamped: (value: number, to: number) => `${value} is outside 0 to 1 and is now ${to}`,
  cut: (most: string) => `the text was cut to ${most} characters`,
  leftOut: 'is not part of the format and was left out',
};
