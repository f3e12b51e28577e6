/** What stands around the sheets: bars, tabs and the ways past them. */
export const skip = {
  heading: 'Skip to',
  sheets: 'Skip to the sheets',
  table: 'Route table',
  results: 'Skip to the results',
};
