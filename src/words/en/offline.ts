/** The program kept in the browser, and newer versions of it. */
export const update = {
  region: 'New version',
  ready: 'A new version is ready.',
  elsewhere: 'A new version has been taken into use in another tab.',
  safe: 'Your work stays as it is.',
  reload: 'Reload',
  later: 'Later',
};

export const kept = {
  yes: 'This browser holds the whole program: it opens without a network.',
  no: 'The program is not in this browser yet: without a network it may not open.',
};
