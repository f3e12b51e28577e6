import { counted } from './plural.ts';

export const check = {
  codes: {
    title: 'Check codes and practice',
    also: 'rules limits clearance make-up air material length turns authority',
  },
  rules: {
    title: 'Rules and limits…',
    also: 'code profile local authority override switch off',
  },
  fault: {
    title: 'Find a fault',
    also: 'weak loud measured diagnose blocked stuck flap leak service trouble',
  },
};

export const clipboard = {
  copied: (what: string) => `Copied ${what}.`,
  nothing: 'There is nothing to paste.',
  pasted: (what: string) => `Pasted ${what}.`,
};

export const edit = {
  selectRun: {
    done: (ducts: number) => `Selected the whole run: ${counted(ducts, { one: 'duct', other: 'ducts' })}.`,
    title: 'Select the whole run',
    also: 'connected branch duct',
  },
  duplicate: {
    done: 'Duplicated.',
    refused: 'A turn without its ducts cannot be duplicated.',
    title: 'Duplicate',
    also: 'copy again twice',
  },
  undo: {
    what: (edit: string) => `Undo ${edit}`,
    title: 'Undo',
    done: (edit: string) => `Undone: ${edit}.`,
    also: 'take back',
  },
  redo: {
    what: (edit: string) => `Redo ${edit}`,
    title: 'Redo',
    done: (edit: string) => `Redone: ${edit}.`,
    also: 'again',
  },
  steps: {
    title: 'List of edits',
    also: 'history undo steps back',
  },
  cut: {
    title: 'Cut',
    also: 'clipboard move',
  },
  copy: {
    title: 'Copy',
    also: 'clipboard',
  },
  paste: {
    title: 'Paste',
    also: 'clipboard insert',
  },
  delete: {
    title: 'Delete what is selected',
    done: 'Deleted.',
    also: 'remove erase heal',
  },
  selectAll: {
    title: 'Select everything',
    done: (ducts: number) => `Selected everything: ${counted(ducts, { one: 'duct', other: 'ducts' })}.`,
    also: 'mark',
  },
  mirrorX: {
    title: 'Mirror left and right',
    also: 'flip east west reflect swap',
  },
  mirrorY: {
    title: 'Mirror front and back',
    also: 'flip north south reflect swap',
  },
  rotate: {
    title: 'Turn round by a quarter',
    also: 'rotate 90 degrees',
  },
  alignWest: {
    title: 'Line up with the westernmost',
    also: 'align left x same column',
  },
  alignSouth: {
    title: 'Line up with the southernmost',
    also: 'align y same row front',
  },
  alignHigh: {
    title: 'Line up with the highest',
    also: 'align height level z same',
  },
  reverse: {
    title: 'Reverse the flow',
    done: 'The air now goes the other way.',
    refused: 'A run between junctions cannot be turned round alone.',
    also: 'direction turn round swap ends hood cap',
  },
};

export const run = {
  insert: {
    done: 'A node was put in the middle of the duct.',
    title: 'Put a turn in the middle',
    also: 'insert node split duct leg point',
  },
  cap: {
    done: 'Cap placed.',
    title: 'Put a cap on this end',
    also: 'place wall roof exit outside',
  },
  noBranch: 'No branch here.',
  ends: 'The run ends here.',
  starts: 'The run starts here.',
  uncap: {
    title: 'Take the cap off',
    done: 'The end is open.',
    also: 'remove open end',
  },
  part: {
    title: 'Part the ducts here',
    done: 'The ducts no longer meet here.',
    also: 'split disconnect separate cut apart',
  },
  join: {
    title: 'Join the two ends',
    done: 'Joined.',
    refused: 'These two are joined already.',
    also: 'connect close duct between merge',
  },
  lab: {
    title: 'Try this turn in the bend lab',
    also: 'radius elbow kinds teach',
  },
  next: {
    title: 'Go on along the air',
    also: 'next downstream travel walk step',
  },
  previous: {
    title: 'Go back against the air',
    also: 'previous upstream travel walk step',
  },
  branch: {
    title: 'Go to the other branch',
    also: 'junction travel walk step',
  },
};

export const view = {
  find: {
    title: 'Find a command',
    also: 'search help',
  },
  shortcuts: {
    title: 'List of shortcuts',
    also: 'keys keyboard help',
  },
  table: {
    title: 'Route table',
    also: 'grid list rows keyboard screen reader',
  },
  charts: {
    title: 'Charts',
    also: 'fan curve system profile pressure budget graph diagram',
  },
  lab: {
    title: 'Bend lab',
    also: 'teach trainer apprentice radius elbow compare kinds guess',
  },
  lessons: {
    title: 'Lessons',
    also: 'teach trainer apprentice tight turns squeezed duct small cap',
  },
  kitchen: {
    title: 'Kitchen, house and air',
    also: 'cooktop burners airtightness blower door make-up air combustion elevation temperature hood fan',
  },
  fit: {
    title: 'Fit the drawing',
    also: 'zoom whole',
  },
  arrangement: {
    also: 'layout arrangement section isometric 3d',
  },
  section: {
    west: 'Section looking west (y-z)',
    north: 'Section looking north (x-z)',
    also: 'switch sheet elevation',
  },
  colour: {
    byLoss: 'Colour by pressure loss',
    byVelocity: 'Colour by velocity',
    also: 'fill legend scale',
  },
  theme: {
    light: 'Light theme',
    dark: 'Dark theme',
    also: 'night appearance',
  },
  units: {
    metric: 'Show millimetres and m³/h',
    imperial: 'Show feet, inches and cfm',
    also: 'imperial metric',
  },
};

export const file = {
  new: {
    title: 'New job',
    also: 'empty blank',
  },
  open: {
    title: 'Open…',
    also: 'load',
  },
  save: {
    title: 'Save',
    also: 'write',
  },
  saveAs: {
    title: 'Save as…',
    also: 'copy',
  },
  print: {
    title: 'Print job sheet…',
    also: 'paper PDF report schedule',
  },
  printDesk: {
    title: 'Print what the desk shows…',
    also: 'paper sheets screen',
  },
  example: {
    title: 'Open the example',
    also: 'demo kitchen',
  },
};

export const scheme = {
  new: {
    title: 'New scheme',
    also: 'route alternative',
  },
  duplicate: {
    title: 'Duplicate scheme',
    also: 'copy alternative compare',
  },
  search: {
    title: 'Find a route',
    also: 'search automatic shortest least loss path exit',
  },
  compare: {
    title: 'Compare schemes',
    also: 'side by side table recommend difference print',
  },
  prices: {
    title: 'Parts and prices',
    also: 'cost list money bill of materials',
  },
  rename: {
    title: 'Rename scheme',
  },
  delete: {
    title: 'Delete scheme',
  },
};

export const underlay = {
  place: {
    title: 'Place an underlay…',
    also: 'import image picture scan photo PDF PNG JPEG SVG DXF plan background trace',
  },
  list: {
    title: 'Underlays',
    also: 'image picture background opacity lock invert remove',
  },
  scale: {
    title: 'Set the scale of an underlay',
    also: 'two points calibrate picture',
  },
  move: {
    title: 'Move an underlay',
    also: 'drag picture',
  },
};
