export const find = {
  noFit: 'What was found on the grid does not fit the room once drawn. Try a smaller step.',
  nothingFits:
    'Nothing fits between the blocks. Try a smaller duct, a tighter bend, less clearance, a smaller step, another exit or the whole space.',
};

export const layout = {
  noHood: 'The hood is not on the sheets of this scheme.',
  noExit: 'No exit is chosen.',
  tooFine: (places: string) => `The grid has ${places} places: choose a larger step.`,
  noRoom:
    'The first bend finds no room behind the collar: something is in the way, or the height is too near to it.',
  noReach: 'The duct reaches none of the chosen exits at this size and height.',
};

export const scheme = {
  found: (exit: string) => `Found route, ${exit}`,
  roof: 'roof',
  wall: 'wall',
};
