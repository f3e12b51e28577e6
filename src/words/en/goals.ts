export const proposals = {
  air: 'Most air',
  airWhat: 'The most air gained first.',
  quiet: 'Quietest at the cook',
  quietWhat: 'The lowest sound at the cook first.',
  cheap: 'Cheapest with enough air',
  cheapWhat: 'What meets the required airflow first, the cheapest of it leading.',
  opening: 'Least opening-up',
  openingWhat: 'The least of the present route to be opened up first.',
};
