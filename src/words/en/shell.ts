/** What stands around the sheets: bars, tabs and the ways past them. */
export const skip = {
  heading: 'Skip to',
  sheets: 'Skip to the sheets',
  table: 'Route table',
  results: 'Skip to the results',
};

export const commandBox = {
  label: 'Find a command',
  placeholder: 'What do you want to do?',
  found: 'Commands found',
  list: 'Commands',
  nothing: 'No command by that name.',
};

export const contextMenu = {
  label: 'What to do here',
  sheet: 'The sheet',
  duct: (name: string) => `Duct, ${name}`,
};

export const dialog = {
  cancel: 'Cancel',
  close: 'Close',
};

export const results = {
  label: 'Results at each fan speed',
  start: 'Run the duct from a hood to a cap outdoors: pick the hood, duct and cap tools on the left in turn.',
  noFan: 'There is no fan yet, so no air.',
  estimate: "Planning estimate. Local code, the hood's instructions and a licensed installer decide.",
};

export const schemes = {
  label: 'Schemes',
  scheme: 'Scheme',
  actions: 'Scheme actions',
  name: 'Scheme name',
};

export const shortcuts = {
  heading: 'Shortcuts',
  list: 'All shortcuts',
  commands: 'Commands',
  onSheets: 'On the sheets',
  onSelection: 'With something selected',
  whileDrawing: 'While drawing a duct',
};

export const steps = {
  label: 'List of edits',
  list: 'Edits, the latest first',
  saidAsOpened: 'As it was opened.',
  wentTo: (edit: string) => `Went to: ${edit}.`,
  asOpened: 'As it was opened',
};

export const tools = {
  label: 'Tools',
  groups: {
    run: 'Change the run',
    room: 'Room',
    notes: 'Dimensions and notes',
  },
};

/** The kinds of things that a tool makes. */
export const kinds = {
  block: 'Block',
  exit: 'Exit face',
  part: 'Part',
  chosen: (what: string, kind: string) => `${what}: ${kind}`,
};

export const topBar = {
  program: 'Gentlebend',
  undoAndRedo: 'Undo and redo',
  jobTitle: 'Job title',
  untitled: 'Untitled kitchen',
  changed: 'Changed since it was saved to a file',
  file: 'File',
  notSaved: 'Not saved to a file yet',
  units: 'Units',
  feetAndInches: 'ft-in',
  millimetres: 'mm',
};

export const views = {
  label: 'Views',
};

export const arrangements = {
  two: 'Two sheets',
  three: 'Three sheets',
  four: 'Three sheets and the isometric',
};

/** What is said after an edit. */
export const delivered = {
  delivered: (speed: string, flow: string) => `${speed}: ${flow}`,
  ofRated: (speed: string, flow: string, share: string) => `${speed}: ${flow}, ${share} of rated`,
  is: (delivered: string) => `${delivered}.`,
  same: (delivered: string) => `${delivered}; about the same.`,
  more: (delivered: string, by: string) => `${delivered}; ${by} more.`,
  less: (delivered: string, by: string) => `${delivered}; ${by} less.`,
};

/** What stands on the keys. */
export const keys = {
  escape: 'Esc',
  space: 'Space',
  enter: 'Enter',
  tab: 'Tab',
  backspace: 'Backspace',
  delete: 'Delete',
  menu: 'ContextMenu',
  control: 'Ctrl',
  shift: 'Shift',
  alt: 'Alt',
};
