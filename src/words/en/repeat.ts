/** Copies of a block in a row, asked for without the sheet. */
export const heading = 'Repeat';
export const count = 'How many more';
export const spacing = 'From centre to centre';
export const way = 'Towards';
export const ways = {
  east: 'east',
  west: 'west',
  north: 'north',
  south: 'south',
  up: 'up',
  down: 'down',
};
export const spacingRefused = 'A spacing is more than nothing.';
export const act = (copies: number) => (copies === 1 ? 'Add 1 more' : `Add ${copies} more`);
