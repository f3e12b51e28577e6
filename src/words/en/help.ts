import { strong } from '../strong.ts';
import { heading as beforeBuilding, type Caution, carbonMonoxide, grease, outdoors } from './cautions.ts';

/** The help: plain sections that a person reads or searches. Nothing in it needs a network. */

/** A piece of a section; `caution` is set apart, `code` as typed. */
export type HelpBlock =
  | { readonly kind: 'text' | 'heading' | 'caution' | 'code'; readonly text: string }
  | { readonly kind: 'steps' | 'list'; readonly items: readonly string[] };

export interface HelpSection {
  readonly id: string;
  readonly title: string;
  readonly blocks: readonly HelpBlock[];
}

const text = (of: string): HelpBlock => ({ kind: 'text', text: of });
const heading = (of: string): HelpBlock => ({ kind: 'heading', text: of });
const lineOf = ({ title, text }: Caution) => `${title} ${text}`;
const caution = (of: string): HelpBlock => ({ kind: 'caution', text: of });
const code = (of: string): HelpBlock => ({ kind: 'code', text: of });
const steps = (...items: readonly string[]): HelpBlock => ({ kind: 'steps', items });
const list = (...items: readonly string[]): HelpBlock => ({ kind: 'list', items });

export const view = {
  title: 'Help',
  back: 'Back to the desk',
  contents: 'Contents',
  search: 'Search the help',
  hint: 'Words to look for',
  none: (typed: string) => `Nothing in the help has “${typed}”. Try one word, or look in the glossary.`,
  found: (sections: string) => `Found in ${sections}`,
  guide: 'Start the guided tour',
};

export const commands = {
  help: 'Help',
  helpAlso: 'manual getting started questions how glossary meaning offline',
  guide: 'Guided start',
  guideAlso: 'tour first steps tutorial begin learn',
  glossary: 'Words of the trade',
  glossaryAlso: 'glossary meaning definition term',
};

export const sections: readonly HelpSection[] = [
  {
    id: 'start',
    title: 'Getting started',
    blocks: [
      text(
        'Gentlebend is a drawing board for the duct of a kitchen hood. You draw where the duct goes; it works out how much air really gets out at each fan speed, where the pressure goes, and what would help.',
      ),
      steps(
        `Look at the example. The strip along the bottom shows the ${strong('air delivered')} at each speed beside what the hood is rated for. Press a figure to see how it comes about.`,
        `Begin a job of your own with ${strong('File, New job')}, or from a template.`,
        `Open the ${strong('Kitchen')} tab: the cooktop, the house, and the air. Select the hood and enter its fan curve from the data sheet.`,
        `Draw the room as far as it matters: blocks (B) for joists, beams and cabinets, exit faces (X) for the outside wall or roof.`,
        `Place the hood (H), draw the duct (D) leg by leg, and put a cap (C) on the end that is outdoors.`,
        `Read the strip, the findings and the proposals. Point at a proposal to see it as a ghost on the sheets; press it to take it; undo it if you do not like it.`,
        `Make a second scheme for another way out, and compare the two.`,
        `Hand over the job sheet: the drawings, the figures with their sources, and the parts.`,
      ),
    ],
  },
  {
    id: 'drawing',
    title: 'Drawing the route',
    blocks: [
      text(
        'The same route stands on every sheet: the floor looks down, a section looks from the side. Draw what runs level on the floor sheet and what rises on a section. Lengths and angles are always the true ones in space.',
      ),
      heading('A leg of an exact length'),
      text(
        'While a leg follows the pointer, type its length and press Enter; Tab goes on to the angle. Feet and inches, inches, millimetres, centimetres and metres are all understood, and mixed: 3\' 4 1/2", 42 in, 1.02 m.',
      ),
      heading('What it catches'),
      text(
        'The pointer catches nodes, centre lines, faces of blocks, the grid and steps of 15°, and says which. Hold Alt to let it go free.',
      ),
      heading('Changing what stands'),
      list(
        'Drag a node, a duct or a block. Arrow keys move what is selected by a step, with Shift by a larger one.',
        'Drag the small round grip at a bend to change its radius, or press R.',
        'A choice of size or material goes to one leg, to the next fitting, or to the whole run: the switch above the choice says which.',
        'Delete takes a turn out and joins its legs. Everything can be undone, and the list of edits goes back to any of them.',
      ),
      heading('Pictures under the sheets'),
      text(
        'Drop a plan (PNG, JPEG, SVG, PDF or DXF) on a sheet and give it its scale by one known distance. It stays in the job file.',
      ),
      heading('With the keyboard alone'),
      text(
        'Everything that the mouse does, the keyboard does too. The route table (T) shows the same route as rows and cells, for those who would rather type, and for screen readers.',
      ),
    ],
  },
  {
    id: 'numbers',
    title: 'What the numbers mean',
    blocks: [
      text(
        'A fan moves less air the more pressure it has to make, and the duct asks for more pressure the more air goes through it. The air delivered is where the two agree. It is found for every speed, with all fittings, the air in the duct at its temperature and height above the sea, and the house around the kitchen.',
      ),
      list(
        `${strong('Air delivered')}: what gets out at that speed. The bar beneath it compares it with the rated figure; the mark on the bar is what the cooktop needs.`,
        `${strong('Total pressure')}: what the fan has to give for it.`,
        `${strong('Fastest')}: the highest velocity and where it is. The colours of the duct show the velocity or the loss, and the legend carries the advised band.`,
        `${strong('Cook')}: how loud it is at the cook's head, within about 5 dB.`,
        `${strong('House')}: how far the house is drawn below outdoors. It needs the volume and the airtightness of the house, on the Kitchen tab.`,
        `${strong('≈')}: the fan curve was made up from one figure of a label. The real one may differ much.`,
      ),
      heading('Where a number comes from'),
      text(
        'Press any figure. It opens its formula, the values put into it, the row of the catalogue and the source of that row, and each value can be opened in turn. A source is named with how it is known: read in the publication, from memory, or common practice.',
      ),
    ],
  },
  {
    id: 'limits',
    title: 'What they do not mean',
    blocks: [
      caution(
        'Everything here is an estimate for planning. Local codes, the instructions of the hood and of every appliance, and a licensed practitioner decide. Measure after installation.',
      ),
      list(
        'Published loss coefficients for the same fitting differ by tens of per cent. Trust the comparison of two routes more than the last digit of one.',
        'Air delivered is not capture. Whether the smoke goes into the hood also depends on its width, its height and draughts in the room.',
        'A duct as built has dents, screws and leaks that no drawing has.',
        'An empty list of findings is not an approval, and a rule that is met here may not be the one adopted where you are.',
        'Levels of sound rank routes; they do not foretell a reading.',
        'The example, its hoods and the prices are invented.',
        'Commercial cooking is outside what is computed here.',
      ),
    ],
  },
  {
    id: 'cautions',
    title: beforeBuilding,
    blocks: [
      caution(lineOf(carbonMonoxide)),
      caution(lineOf(grease)),
      caution(lineOf(outdoors)),
      caution(
        'Structure. A joist, beam or stud is drawn here as something to go around. Whether it may be cut or notched is for whoever answers for the building.',
      ),
    ],
  },
  {
    id: 'better',
    title: 'Making it better',
    blocks: [
      text(
        'Each proposal was really solved: what it gains is the difference between two solved routes. They are ranked by the goal that you choose, and say whether they fit the room as drawn.',
      ),
      list(
        `${strong('Find a route')} looks for other ways from the hood to an exit face, past what stands in the room.`,
        `${strong('Compare schemes')} sets up to four side by side on one page that can be printed.`,
        `${strong('Bend lab')} shows what the radius and the kind of a turn cost, with lessons for teaching.`,
        `${strong('Find a fault')} starts from what was measured at a hood that is weak or loud today.`,
        `${strong('Codes and practice')}, on the Findings tab, holds the job against rules whose limits you can change to the ones adopted where you are.`,
      ),
    ],
  },
  {
    id: 'leaves',
    title: 'What leaves the desk',
    blocks: [
      list(
        `${strong('Job sheet (PDF)')}: drawings to scale, the schedule, results, findings, parts and the whole calculation with its sources, for A4 or Letter. Somebody else can check it without this program.`,
        `${strong('Save a drawing')}: a sheet as SVG, PNG, or DXF in real units with layers by trade.`,
        `${strong('Parts list and cutting plan')}: what to buy, how to cut it with the least waste, and a CSV for a spreadsheet. Its prices are yours to put in.`,
        `${strong('Print')}: the same job sheet straight from the browser.`,
      ),
      text(
        'The job sheet says with its figures that they are an estimate for planning, and which assumptions they stand on. Leave that page in when you hand it over.',
      ),
    ],
  },
  {
    id: 'files',
    title: 'Files and the safety of your work',
    blocks: [
      text(
        'Nothing leaves this machine. The program has no account and no server that keeps anything; it does not count visits and asks nothing of any network.',
      ),
      heading('Kept as you go'),
      text(
        'Every change is kept in this browser a moment after it is made; closing or reloading the tab loses none. Each kitchen is a job of its own, with versions that can be brought back.',
      ),
      text(
        'A browser is not a filing cabinet: clearing its data clears the jobs too, and a private window keeps nothing. Save the jobs that matter to files.',
      ),
      heading('Files'),
      text(
        'A job file ends in .gentlebend.json and holds everything: the drawing, the hood, the house, the prices and the pictures under the sheets. Files of every earlier version stay readable. A broken file is repaired where no number has to be guessed, with a list of what was done, or refused with the place that is wrong.',
      ),
      heading('A link that holds the job'),
      text(
        `${strong('Copy share link')} puts the whole job into the part of an address after the # sign, which browsers never send to a server. Whoever opens it gets a copy of the job; nobody’s work is replaced. Long links are cut by some mail and chat programs, so the length is told, and pictures are left out unless you include them.`,
      ),
      heading('Without a network'),
      text(
        'After the first visit this browser holds the program itself, and it opens without a network. When a new version is there it waits, and says so; Reload takes it, with your work as it is.',
      ),
    ],
  },
  { id: 'keyboard', title: 'Keyboard', blocks: [] },
  {
    id: 'command',
    title: 'The command line',
    blocks: [
      text(
        'The same calculation runs without a screen, over one file or many. With Node installed, in a copy of the project:',
      ),
      code('npm run --silent gentlebend -- help'),
      code('npm run --silent gentlebend -- solve kitchen.gentlebend.json --losses'),
      code('npm run --silent gentlebend -- check *.gentlebend.json --strict'),
      code('npm run --silent gentlebend -- propose kitchen.gentlebend.json --goal quiet'),
      text(
        'Every command takes --json for scripts, in SI units. Exit code 0 means done, 1 that something was found, 2 that the input could not be read. “help” lists all commands and options.',
      ),
    ],
  },
  { id: 'glossary', title: 'Words of the trade', blocks: [] },
];
