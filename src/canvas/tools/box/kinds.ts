import type { Block, ExitFace, Job } from '../../../graph/document.ts';
import { INCH } from '../../../units/index.ts';
import { words } from '../../../words/index.ts';

const says = words.tools.boxes;

/** What the block and exit tools draw, with the sizes that it usually has. */
export interface BoxKind {
  readonly what: 'block' | 'exit';
  readonly kind: Block['kind'] | ExitFace['kind'];
  readonly name: string;
  /** From where to where it reaches above the floor where only the plan is drawn, m. */
  readonly heights: (job: Job) => readonly [number, number];
  /** Which of its ends stays where it is when its height is typed. */
  readonly fixed: 'bottom' | 'top';
  /** How thick it is when it is drawn as a line, m; 0 where a line makes none. */
  readonly thickness: number;
}

/** A cabinet hangs from 54 to 84 in above the floor: common practice. */
const CABINET = [54 * INCH, 84 * INCH] as const;
/** Nominal 2 × 10 joist, as sold: 1 1/2 × 9 1/4 in, common practice. */
const JOIST = { width: 1.5 * INCH, height: 9.25 * INCH };
/** Beam below a ceiling and its width, m: assumed, to be typed over. */
const BEAM = { width: 3.5 * INCH, height: 9.5 * INCH };
/** A stud wall with its linings, m: common practice. */
const WALL = 4.5 * INCH;
/** A window from its sill to its head, and a louvre, m above the floor: assumed, to be typed over. */
const WINDOW = [36 * INCH, 80 * INCH] as const;
const INTAKE = [12 * INCH, 24 * INCH] as const;
/** An outside wall, and a roof with its boards, m: assumed, to be typed over. */
const OUTSIDE = 6 * INCH;

const room = ({ kitchen }: Job) => [0, kitchen.ceilingHeight] as const;

export const blockKinds: readonly BoxKind[] = [
  { what: 'block', kind: 'chase', name: says.chase, heights: room, fixed: 'bottom', thickness: 0 },
  { what: 'block', kind: 'obstacle', name: says.obstacle, heights: room, fixed: 'bottom', thickness: 0 },
  {
    what: 'block',
    kind: 'cabinet',
    name: says.cabinet,
    heights: () => CABINET,
    fixed: 'bottom',
    thickness: 0,
  },
  {
    what: 'block',
    kind: 'joist',
    name: says.joist,
    heights: ({ kitchen }) => [kitchen.ceilingHeight, kitchen.ceilingHeight + JOIST.height],
    fixed: 'bottom',
    thickness: JOIST.width,
  },
  {
    what: 'block',
    kind: 'beam',
    name: says.beam,
    heights: ({ kitchen }) => [kitchen.ceilingHeight - BEAM.height, kitchen.ceilingHeight],
    fixed: 'top',
    thickness: BEAM.width,
  },
  { what: 'block', kind: 'wall', name: says.wall, heights: room, fixed: 'bottom', thickness: WALL },
  {
    what: 'block',
    kind: 'window',
    name: says.window,
    heights: () => WINDOW,
    fixed: 'bottom',
    thickness: OUTSIDE,
  },
  {
    what: 'block',
    kind: 'intake',
    name: says.intake,
    heights: () => INTAKE,
    fixed: 'bottom',
    thickness: OUTSIDE,
  },
  { what: 'block', kind: 'lot line', name: says.lotLine, heights: room, fixed: 'bottom', thickness: INCH },
];

export const exitKinds: readonly BoxKind[] = [
  { what: 'exit', kind: 'wall', name: says.outsideWall, heights: room, fixed: 'bottom', thickness: OUTSIDE },
  {
    what: 'exit',
    kind: 'roof',
    name: says.roof,
    heights: ({ kitchen }) => [kitchen.ceilingHeight + 0.3, kitchen.ceilingHeight + 0.3 + OUTSIDE],
    fixed: 'bottom',
    thickness: OUTSIDE,
  },
];

/** How far a box reaches along the line of sight of a section where only the section is drawn, m: assumed, to be typed over. */
export const USUAL_DEPTH = 24 * INCH;
