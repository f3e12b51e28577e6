import { strong } from '../strong.ts';

/** The guided start: each step is done by doing it on the example. */
export const card = {
  label: 'Guided start',
  of: (step: number, steps: number) => `Step ${step} of ${steps}`,
  keyboard: 'With the keyboard:',
  next: 'Next step',
  end: 'End the tour',
  done: 'Done',
  escape: 'Esc ends it. It never comes again by itself; Help has it.',
  well: 'Done.',
  ended: 'The guided start is ended. Help, by F1, has it whenever you like.',
};

export const steps = {
  strip: {
    title: 'What really gets out',
    text: `Each card is one speed of the fan: the air that gets out through this duct, beside what the hood is rated for. ${strong('Press the name of another speed')}; the drawing then shows the air at that one.`,
    keys: 'Tab to a speed in the strip and press Space.',
  },
  turn: {
    title: 'A turn costs air',
    text: `The floor sheet looks down on the duct. ${strong('Click the marked turn')} to see what it costs.`,
    keys: 'on the floor sheet, press ] until the turn is selected.',
  },
  radius: {
    title: 'Make it gentler',
    text: `The panel tells the loss of the turn. ${strong('Drag the round grip')} inside the bend, away from the corner, or type a larger r/D in the panel, and watch the strip.`,
    keys: 'on the sheet press R, type 2D and press Enter.',
  },
  undo: {
    title: 'Nothing is lost',
    text: `${strong('Take that back with Undo.')} Every edit can be undone, and the list beside it goes back to any of them.`,
    keys: 'Ctrl+Z, or ⌘Z on a Mac.',
  },
  proposal: {
    title: 'What would help most',
    text: `Each of these changes was solved, not guessed, and they are ranked by what they gain. Point at one to see it on the sheets. ${strong('Press the first')} to make it.`,
    keys: 'Tab to the first one in the panel and press Enter.',
  },
  figure: {
    title: 'Where a number comes from',
    text: `${strong('Press the air delivered')} at the chosen speed. Its formula opens, with every value in it and the source of each.`,
    keys: 'Tab to the figure in the strip and press Enter.',
  },
  scheme: {
    title: 'Another way out',
    text: `A job holds several ways to run the duct. ${strong('Choose the other scheme')} and compare what gets out.`,
    keys: 'Tab to the schemes in the top bar, move with the arrow keys, and press Space.',
  },
};

export const last = {
  title: 'That is all it takes',
  text: `Begin a kitchen of your own with ${strong('File, New job')}. ${strong('F1')} opens the help, ${strong('?')} lists the keys, and a dotted line under a word says that it can tell what it means.`,
  caution:
    'What you see are estimates for planning. Local codes, the instructions of the hood and a licensed installer decide.',
};
