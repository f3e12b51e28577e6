export const section = {
  refused: 'Write one diameter, or two sides such as 3 1/4 x 10.',
  tooWide: 'That is wider than 2 m: check the unit.',
};
