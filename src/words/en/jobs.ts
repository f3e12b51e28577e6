import { counted } from './plural.ts';

/** Jobs, templates and versions that this browser keeps, and what stands between two tabs on one job. */

const jobs = (n: number) => counted(n, { one: 'job', other: 'jobs' });
const versionsOf = (n: number) => counted(n, { one: 'version', other: 'versions' });
const templatesOf = (n: number) => counted(n, { one: 'template', other: 'templates' });
const legs = (n: number) => counted(n, { one: 'leg', other: 'legs' });

export const count = { jobs };

export const bytes = {
  kilo: (amount: string) => `${amount} KB`,
  mega: (amount: string) => `${amount} MB`,
  giga: (amount: string) => `${amount} GB`,
};

export const untitled = 'Untitled kitchen';
export const copyOf = (title: string) => `${title} (copy)`;
export const imported = (title: string) => `${title} (imported)`;
export const fromVersion = (title: string, when: string) => `${title} (as of ${when})`;

export const view = {
  title: 'Jobs',
  back: 'Back to the desk',
  parts: 'What is listed',
  jobs: 'Jobs',
  templates: 'Templates',
  deleted: 'Deleted',
  search: 'Search',
  searchHint: 'Title or scheme',
  new: 'New job',
  more: (title: string) => `More for ${title}`,
  open: 'Open',
  rename: 'Rename…',
  duplicate: 'Duplicate',
  delete: 'Delete',
  bringBack: 'Bring back',
  throwAway: 'Delete for good',
  throwAllAway: 'Delete all for good',
  undo: 'Undo',
  here: 'on the board',
  elsewhere: 'in another tab',
  noDrawing: 'nothing drawn',
  tooLong: 'too long to draw so small',
  changed: (when: string) => `Changed ${when}`,
  deletedAt: (when: string) => `Deleted ${when}`,
  inFile: (name: string) => `In ${name}`,
  changedSince: (name: string) => `Changed since ${name} was saved`,
  nameOf: 'Name of the job',
  take: 'Rename',
  none: {
    title: 'No other jobs yet',
    text: 'Each kitchen is a job of its own. Whatever you draw is kept here as you go, without saving. Begin one with New job or from a template, or drop job files onto this window.',
    templates: 'See the templates',
  },
  notFound: (text: string) => `No job has “${text}” in its title or in the name of a scheme.`,
  noneDeleted: 'Nothing is deleted. A deleted job stays here for a month.',
  deletedLead: 'A deleted job can be brought back for a month. Until then it takes room.',
  summary: (count: string, flow: string | null) => (flow === null ? count : `${count}, ${flow}`),
  schemes: (n: number) => counted(n, { one: 'scheme', other: 'schemes' }),
  legs,
};

export const said = {
  deleted: (title: string) => `${title} is deleted.`,
  back: (title: string) => `${title} is back.`,
  gone: (n: number) => `${jobs(n)} deleted for good.`,
  duplicated: (title: string) => `${title} was added.`,
  renamed: (title: string) => `Now called ${title}.`,
  opened: (title: string) => `${title} is on the board.`,
  templateSaved: (title: string) => `The template ${title} is saved.`,
  templateDeleted: (title: string) => `The template ${title} is deleted.`,
  versionKept: (name: string) => `The version ${name} is kept.`,
  versionsDropped: (n: number) => `${versionsOf(n)} deleted.`,
  restored: 'The version is on the board. Undo takes it back.',
  sameVersion: 'The board is the same as that version already.',
};

export const template = {
  own: 'Your own',
  builtIn: 'With the program',
  invented: 'Everything in these is invented: hoods, fans and houses. Put your own figures in their place.',
  begin: 'Begin with it',
  withoutRoute: 'without a route',
  none: {
    title: 'No templates of your own yet',
    text: 'Draw a job the way you usually begin: your hood with its fan curves, the prices, the rules. Then choose Save as template in the File menu.',
  },
  save: {
    title: 'Save as template',
    lead: 'New jobs can begin with it. It keeps the hood and its fan curves, the kitchen, the house, the air, the prices and the rules.',
    name: 'Name of the template',
    route: 'With the route, the room and the notes',
    save: 'Save the template',
  },
  supplied: {
    wall: {
      title: 'Wall hood, out the wall behind it',
      text: 'A 36 in hood under the wall cabinets, one gentle turn, and straight out through the wall in 8 in galvanized.',
    },
    side: {
      title: 'Wall hood, along the joists to a side wall',
      text: 'Up into the ceiling, one gentle turn, then 13 ft straight between two joists and out at the side.',
    },
    island: {
      title: 'Island hood, up through the roof',
      text: 'A 48 in hood over an island, straight up in 10 in through ceiling and attic to a roof cap.',
    },
    downdraught: {
      title: 'Downdraught, under the floor to the wall',
      text: 'A fan below the counter, down into the crawl space and out low at the wall in 10 in.',
    },
  },
};

export const versions = {
  title: (job: string) => `Versions of ${job}`,
  inSchemes: (legs: string, schemes: string) => `${legs} in ${schemes}`,
  lead: 'Kept by themselves as you work: all of the last hour, then fewer and fewer back to a year. Those with a name of yours stay.',
  now: 'Now on the board',
  keep: 'Keep this version',
  name: 'Name for how it is now',
  namePlaceholder: 'such as: as quoted',
  restore: 'Restore',
  copy: 'Open as a copy',
  rename: 'Name it…',
  unname: 'Take the name off',
  delete: 'Delete',
  thin: 'Delete all without a name',
  more: (when: string) => `More for the version of ${when}`,
  list: 'Versions, newest first',
  newName: 'Name of the version',
  take: 'Take',
  restored: 'restore version',
  none: {
    title: 'No versions yet',
    text: 'The first is kept after a few minutes of work, when the job is saved to a file, and before anything that takes much away. You can keep one by name at any time.',
  },
  reason: {
    named: 'Kept by you',
    opened: 'When it was opened',
    working: 'While working',
    saved: 'Saved to a file',
    before: (what: string) => (what === '' ? 'Before a large change' : `Before: ${what}`),
    elsewhere: 'Work of another tab that had not been kept',
  },
  is: (count: string, flow: string | null) => (flow === null ? `${count}, not solved` : `${count}, ${flow}`),
  against: (changes: readonly string[]) => `${changes.join(', ')} than now`,
  moreLegs: (n: number) => `${legs(n)} more`,
  fewerLegs: (n: number) => `${legs(n)} fewer`,
  moreAir: (flow: string) => `${flow} more`,
  lessAir: (flow: string) => `${flow} less`,
  moreSchemes: (n: number) => `${counted(n, { one: 'scheme', other: 'schemes' })} more`,
  fewerSchemes: (n: number) => `${counted(n, { one: 'scheme', other: 'schemes' })} fewer`,
  alike: 'the same legs and air as now',
};

/** What a job kept before something else takes its place is called. */
export const before = {
  file: 'its file was opened again',
  restore: 'another version was restored',
};

export const hold = {
  elsewhere: 'This job is open in another tab.',
  elsewhereMore: 'What you see here follows it, and nothing can be changed here.',
  asking: 'Asking the other tab for the job…',
  yielded: 'This job was taken over in another tab.',
  yieldedMore: 'All of your work went with it.',
  seized: 'Another tab has taken this job.',
  seizedMore: 'What had not been kept yet is among its versions.',
  takeOver: 'Take over here',
  copy: 'Work on a copy',
  freed: 'The other tab is closed: this job can be changed here again.',
  tookOver: 'The job is taken over: it can be changed here.',
  refused: 'Nothing was changed: this job is open in another tab.',
  region: 'About this job',
};

export const room = {
  full: 'This browser has no room left, so your last changes are not kept yet.',
  fullMore:
    'Save the job to a file now. Then make room: delete versions or jobs that you no longer need, or export everything and delete it here.',
  fullSafe:
    'The last changes are held for a reload, but the next ones may not be. Save the job to a file, then make room: delete versions or jobs.',
  failing: 'This browser could not keep your last changes.',
  failingMore:
    'They stay on the board, and it is tried again. Save the job to a file before you close this tab.',
  nothing: 'This browser keeps nothing, as in a private window.',
  nothingMore: 'What you draw is gone with this tab unless you save it to a file.',
  near: (share: string) => `The room that this browser gives is ${share} full.`,
  nearMore: 'Export everything or delete what you no longer need, before work can no longer be kept.',
  again: 'Your work is kept again.',
  save: 'Save to a file',
  makeRoom: 'Make room',
  used: (used: string, quota: string) => `${used} of ${quota} used`,
  lasting: 'This browser keeps them until you delete them.',
  passing: 'This browser may clear them when it runs short of room.',
  ask: 'Ask it to keep them',
  refused: 'The browser did not agree. An export is the sure way to keep them.',
  dismiss: 'Hide',
  writeFailed: 'That was not done',
  writeFailedFull:
    'This browser has no room left. Delete versions or jobs that you no longer need, or export everything first. Nothing that was kept is lost.',
};

export const archive = {
  export: 'Export everything…',
  import: 'Import…',
  fileName: (day: string) => `gentlebend-${day}.zip`,
  notZip: 'It is no zip file, or it is damaged.',
  notArchive: 'It is a zip file, but not one that Gentlebend has exported.',
  tooLarge: 'It holds more than any export of this program would.',
  newer: 'It was exported by a newer Gentlebend than this one. Import it there.',
  refused: (name: string) => `${name} was not imported`,
  nothingChanged: 'Nothing here has changed.',
  done: (name: string) => `${name} was imported`,
  kept: 'Nothing that was here before was changed.',
  added: (n: number) => `${jobs(n)} added`,
  same: (n: number) => `${jobs(n)} here already, and the same`,
  both: (n: number) => `${jobs(n)} differ from those here: both are kept, these as “(imported)”`,
  versions: (n: number) => `${versionsOf(n)} added`,
  templates: (n: number) => `${templatesOf(n)} added`,
  settings: (n: number) => `${counted(n, { one: 'setting', other: 'settings' })} taken over`,
  nothingNew: 'All of it was here already.',
  missing: (path: string) => `${path} is named in it, but missing`,
  exported: (name: string, count: string) => `${count} exported to ${name}.`,
};

export const file = {
  gone: (name: string) => `${name} is no longer where it was`,
  goneText:
    'It was moved, renamed or deleted. The work is kept in this browser, and the board shows it. Choose where to save it to have it in a file again.',
  refused: (name: string) => `The browser may not write to ${name}`,
  refusedText: 'Nothing was written. Save again and allow it, or save under another name.',
  changed: (name: string) => `${name} was changed by another program`,
  changedText:
    'The board shows the work as this browser kept it. The file holds something else since it was last saved here.',
  changedTake: 'Take what is in the file',
  saveAs: 'Save as…',
  saved: (name: string) => `Saved to ${name}.`,
  pageTitle: (mark: string, title: string) => `${mark}${title} – Gentlebend`,
  unkept: {
    title: 'The work on the board is kept nowhere',
    text: 'This browser could not keep it, and it is in no file. Another job would take its place.',
    goOn: 'Go on and lose it',
  },
  tooMany: 'These were not opened',
};

export const drop = {
  job: 'Open this job',
  jobHint: 'The work on the board stays kept.',
  archive: 'Import an export',
  jobs: (n: number) => `Open ${counted(n, { one: 'file', other: 'files' })}`,
  jobsHint: 'The first comes onto the board, the others to your jobs.',
  any: 'Drop it to open it',
  anyHint: 'A job file is opened. A picture, PDF or DXF goes under the sheet that you drop it on.',
  lay: (sheet: string) => `Lay it under: ${sheet}`,
  toSheet: 'Drop it on a sheet to lay it under',
  notOne: (name: string) => `${name} was not opened`,
  pictureBeside:
    'A picture, PDF or DXF is laid under a sheet: drop it on the sheet that it belongs to. Nothing on the board has changed.',
  onePicture: 'Drop pictures one at a time, each on the sheet that it belongs to.',
  unknown:
    'It is neither a job file (.gentlebend.json), nor an export (.zip), nor a picture, PDF or DXF. Nothing on the board has changed.',
  more: (n: number) => `${jobs(n)} added to your jobs.`,
};

export const commands = {
  jobs: 'Jobs…',
  jobsAlso: 'list recent library kitchens manage rename duplicate delete search storage room',
  recent: 'Recent',
  template: 'New from template…',
  templateAlso: 'begin start standard wall island downdraught',
  saveTemplate: 'Save as template…',
  saveTemplateAlso: 'standard begin reuse',
  versions: 'Versions…',
  versionsAlso: 'restore earlier state snapshot',
  exportAlso: 'backup zip all jobs',
  importAlso: 'backup restore zip merge',
};
