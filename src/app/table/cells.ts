import type { BoardState, Recipe } from '../../canvas/board.ts';
import type { Node, Vec3 } from '../../graph/document.ts';
import {
  setBend,
  setCap,
  setDuct,
  setLength,
  setMaterial,
  setNodePosition,
} from '../../graph/edits/index.ts';
import { schemeOf } from '../../graph/infer.ts';
import type { RouteNode } from '../../graph/route.ts';
import type { NodeRow, SegmentRow, TraceRow } from '../../graph/trace.ts';
import { bends, caps, findBend, findCap, findMaterial, materials } from '../../hydraulics/catalogue.ts';
import {
  formatAngle,
  formatFlow,
  formatLength,
  formatPressure,
  formatTrimmed,
  formatVelocity,
  type Parsed,
  parseLength,
  parseNumber,
  parseRelativeLength,
} from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { nodeName, segmentName } from '../places.ts';
import { parseSection, sectionText } from '../section-text.ts';
import { capitalized } from '../wording.ts';

const says = words.table.cells;

/** The columns, from left to right. */
export const columns = [
  { id: 'place', title: says.columns.place },
  { id: 'way', title: says.columns.way },
  { id: 'length', title: says.columns.length },
  { id: 'east', title: says.columns.east },
  { id: 'north', title: says.columns.north },
  { id: 'height', title: says.columns.height },
  { id: 'size', title: says.columns.size },
  { id: 'made', title: says.columns.made },
  { id: 'flow', title: says.columns.flow },
  { id: 'velocity', title: says.columns.velocity },
  { id: 'loss', title: says.columns.loss },
] as const;

export type ColumnId = (typeof columns)[number]['id'];

/** An edit that a cell asks for, with its name for undo; or a sentence why it cannot be. */
export type Asked =
  | { readonly ok: true; readonly label: string; readonly recipe: Recipe }
  | { readonly ok: false; readonly message: string };

export interface Choice {
  readonly id: string;
  readonly name: string;
}

/** What stands in one place of the table, and how it is changed there. */
export interface Cell {
  readonly text: string;
  /** Named to a screen reader where the column's title is not enough. */
  readonly name?: string;
  /** Typed over. */
  readonly typed?: (text: string) => Asked;
  /** Picked from a list. */
  readonly picked?: {
    readonly value: string;
    readonly choices: readonly Choice[];
    readonly take: (id: string) => Asked;
  };
}

const empty: Cell = { text: '' };

/** The cell of a row in a column, as the board now stands. */
export function cellOf(state: BoardState, row: TraceRow, column: ColumnId): Cell {
  return row.kind === 'node' ? nodeCell(state, row, column) : segmentCell(state, row, column);
}

const axes: Partial<Record<ColumnId, 0 | 1 | 2>> = { east: 0, north: 1, height: 2 };

function nodeCell(state: BoardState, row: NodeRow, column: ColumnId): Cell {
  const { units, schemeId } = state;
  const { route } = state.solution;
  const node = route.nodes.get(row.id);
  const drawn = schemeOf(state.live, schemeId).nodes.find(({ id }) => id === row.id);
  if (!node || !drawn) return empty;
  const axis = axes[column];
  if (axis !== undefined)
    return {
      text: formatLength(node.at[axis], units),
      typed: (text) =>
        asked(parsePlace(text, units, node.at[axis]), words.edits.route.moveNode, (value) => (job) => {
          const at: Vec3 = [node.at[0], node.at[1], node.at[2]];
          at[axis] = value;
          setNodePosition(job, schemeId, row.id, at);
        }),
    };
  switch (column) {
    case 'place':
      return { text: capitalized(nodeName(route, row.id)) };
    case 'way':
      return { text: node.bend ? says.turn(formatAngle(node.bend.angle)) : '' };
    case 'size':
      return ratioCell(state, node);
    case 'made':
      return fittingCell(state, node, drawn);
    case 'loss':
      return { text: lossAt(state, row.id) };
    default:
      return empty;
  }
}

function ratioCell({ schemeId }: BoardState, { id, bend }: RouteNode): Cell {
  if (!bend || bend.radius === 0) return empty;
  return {
    text: formatTrimmed(bend.radiusRatio),
    name: 'r/D',
    typed: (text) =>
      asked(parseRatio(text), words.edits.route.bendRadius, (radiusRatio) => (job) => {
        setBend(job, schemeId, id, { kind: bend.kind, radiusRatio });
      }),
  };
}

const noCap = 'none';

function fittingCell({ schemeId, solution, live }: BoardState, node: RouteNode, drawn: Node): Cell {
  const { id, bend } = node;
  if (bend) {
    const shape = solution.route.segments.get(bend.downstream)?.section.shape;
    const suited = bends.filter(
      ({ section, id: kind }) =>
        section === 'any' || kind === bend.kind || (section === 'round') === (shape === 'round'),
    );
    return {
      text: findBend(bend.kind)?.name ?? bend.kind,
      name: says.bend,
      picked: {
        value: bend.kind,
        choices: suited,
        take: (kind) => does(words.edits.route.bend, (job) => setBend(job, schemeId, id, { kind })),
      },
    };
  }
  if (node.kind === 'cap' || node.kind === 'open end')
    return {
      text: node.kind === 'cap' ? ((drawn.cap && findCap(drawn.cap)?.name) ?? drawn.cap ?? '') : says.noCap,
      name: says.cap,
      picked: {
        value: drawn.cap ?? noCap,
        choices: [{ id: noCap, name: says.noCap }, ...caps],
        take: (cap) =>
          does(cap === noCap ? words.edits.route.takeCapOff : words.edits.route.placeCap, (job) => {
            setCap(job, schemeId, id, cap === noCap ? null : cap);
          }),
      },
    };
  if (node.kind === 'hood') return { text: live.hoods.find((hood) => hood.id === drawn.hood)?.name ?? '' };
  return empty;
}

function segmentCell(state: BoardState, row: SegmentRow, column: ColumnId): Cell {
  const { units, schemeId } = state;
  const outcome = state.solution.speeds[state.speed]?.outcome;
  const result = outcome?.solved ? outcome.segments.get(row.id) : undefined;
  switch (column) {
    case 'place':
      return { text: capitalized(segmentName(state.solution.route, row.id)) };
    case 'way':
      return { text: row.direction };
    case 'length':
      return {
        text: formatLength(row.length, units),
        typed: (text) =>
          asked(parseLeg(text, units, row.length), words.edits.route.length, (length) => (job) => {
            setLength(job, schemeId, row.id, length);
          }),
      };
    case 'size':
      return {
        text: sectionText(row.section, units),
        name: says.size,
        typed: (text) =>
          asked(parseSection(text, units), words.edits.route.ductSize, (duct) => (job) => {
            setDuct(job, schemeId, [row.id], duct);
          }),
      };
    case 'made':
      return {
        text: findMaterial(row.material)?.name ?? row.material,
        name: says.material,
        picked: {
          value: row.material,
          choices: materials,
          take: (id) => does(words.edits.route.material, (job) => setMaterial(job, schemeId, [row.id], id)),
        },
      };
    case 'flow':
      return { text: result ? formatFlow(result.flow, units) : '' };
    case 'velocity':
      return { text: result ? formatVelocity(result.velocity, units) : '' };
    case 'loss':
      return { text: result ? formatPressure(result.frictionLoss, units) : '' };
    default:
      return empty;
  }
}

/** Pressure lost in everything that stands at a node. */
function lossAt({ solution, speed, units }: BoardState, id: string): string {
  const outcome = solution.speeds[speed]?.outcome;
  if (!outcome?.solved) return '';
  const fittings = outcome.fittings.filter(({ at }) => at === id);
  if (fittings.length === 0) return '';
  return formatPressure(
    fittings.reduce((sum, { loss }) => sum + loss, 0),
    units,
  );
}

function does(label: string, recipe: Recipe): Asked {
  return { ok: true, label, recipe };
}

function asked<T>(read: Parsed<T>, label: string, recipe: (value: T) => Recipe): Asked {
  return read.ok ? does(label, recipe(read.value)) : read;
}

/** A coordinate: `+6"` is a step, `-6"` a place below 0. */
function parsePlace(text: string, units: BoardState['units'], from: number): Parsed {
  const below = /^\s*[-−]/.test(text);
  return below
    ? parseLength(text, units, { negative: true })
    : parseRelativeLength(text, units, from, { negative: true });
}

function parseLeg(text: string, units: BoardState['units'], from: number): Parsed {
  const read = parseRelativeLength(text, units, from);
  return read.ok && read.value < 0.01 ? { ok: false, message: words.panels.duct.tooShort } : read;
}

function parseRatio(text: string): Parsed {
  const read = parseNumber(text.replace(/r\/D/i, ''));
  if (!read.ok || read.value < 0.5 || read.value > 10)
    return { ok: false, message: words.panels.node.radiusRefused };
  return read;
}
