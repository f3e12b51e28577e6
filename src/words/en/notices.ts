export const savingFailed = {
  title: 'The file was not saved',
};

export const openingFailed = {
  title: 'The file could not be opened',
};

export const refused = {
  title: (name: string) => `${name} was not opened`,
  text: 'Nothing on the board has changed. This is wrong in the file:',
};

export const repaired = {
  title: (name: string) => `${name} was repaired`,
  text: (places: string) =>
    `${places} in the file had to be put right. Look them over before relying on the numbers:`,
};

export const older = {
  title: (name: string) => `${name} is of an older version`,
  text: 'It was brought to the present version of the format, and is written in that when you save it. Changed:',
  andRepaired:
    'It was brought to the present version of the format, and is written in that when you save it. Some of it had to be put right as well; look it over before relying on the numbers:',
};

export const kept = {
  what: 'The work kept in this browser',
};
