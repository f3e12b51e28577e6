import { formatAngle } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { type BendData, type BendRow, bendTables, findBend, need } from '../catalogue.ts';
import { area, hydraulicDiameter } from '../section.ts';
import type { LocalLoss, LossPart, Section, SourceKind } from '../types.ts';
import { lookUp, rangeOf, tidy } from './table.ts';

const says = words.losses.bends;

export interface BendQuery {
  /** Catalogue id. */
  readonly kind: string;
  /** Deflection from straight on, degrees. */
  readonly angle: number;
  /** Centre-line radius over diameter, or over the side in the plane of the turn; the row's own where absent. */
  readonly radiusRatio?: number;
  readonly section: Section;
  /** For rectangular and oval duct: the side in the plane of the turn and the side across it, m. */
  readonly inPlane?: number;
  readonly acrossPlane?: number;
}

interface Coefficient {
  readonly c: number;
  readonly notes: readonly string[];
  /** True where the number rests on a judgement and not on the table alone. */
  readonly assumed: boolean;
}

type At = Readonly<Record<string, number>>;

/** The r/D that a kind of bend is usually made with; refuses an id that the catalogue does not have. */
export function defaultRadiusRatio(kind: string): number {
  return need(findBend(kind), 'bends', kind).defaultRadiusRatio;
}

/**
 * Loss of a bend, by the table of its catalogue row; C is over and above the friction of the arc and refers
 * to the duct's own section. Angles by the handbook's angle factor, or by the mitre's own table with its
 * Reynolds correction. A kind made for the other shape of duct is replaced by its counterpart, which is noted.
 * Refuses a kind that the catalogue does not have.
 */
export function bendLoss(query: BendQuery): LocalLoss {
  const asked = need(findBend(query.kind), 'bends', query.kind);
  const { row, notes: standIn } = fitting(asked, query.section);
  const sides = sidesOf(query);
  const radiusRatio = query.radiusRatio ?? row.defaultRadiusRatio;
  const at = {
    angle: query.angle,
    'r/D': radiusRatio,
    'r/W': radiusRatio,
    'H/W': sides.acrossPlane / sides.inPlane,
    diameter: hydraulicDiameter(query.section),
  };
  const { c, notes, assumed } = coefficient(row.loss, at);
  const asRectangle = query.section.shape === 'oval' && row.section === 'rectangular';
  const oval = asRectangle ? [says.ovalAsRectangle] : [];
  return {
    parts: [partOf(row.loss, c, query.section)],
    c,
    section: query.section,
    includesArcFriction: row.includesArcFriction,
    label: label(row, query.angle, radiusRatio, sides),
    provenance: {
      row: `bends/${row.id}`,
      source: row.source,
      sourceKind: kindOf(row, assumed || asRectangle),
      notes: [...new Set([...standIn, ...oval, ...notes])],
    },
  };
}

function kindOf(row: BendRow, assumed: boolean): SourceKind {
  return assumed ? 'assumption' : row.sourceKind;
}

/** The row, or its counterpart where the row is made for duct of the other shape. */
function fitting(row: BendRow, section: Section): { row: BendRow; notes: string[] } {
  const round = section.shape === 'round';
  const fits = row.section === 'any' || (row.section === 'round') === round;
  if (fits || row.counterpart === undefined) return { row, notes: [] };
  const other = need(findBend(row.counterpart), 'bends', row.counterpart);
  const shape = says.shapes[row.section === 'round' ? 'round' : 'rectangular'];
  return { row: other, notes: [says.standsIn(row.name, shape, other.name)] };
}

function sidesOf(query: BendQuery): { inPlane: number; acrossPlane: number } {
  const { section } = query;
  if (section.shape === 'round') return { inPlane: section.diameter, acrossPlane: section.diameter };
  return { inPlane: query.inPlane ?? section.width, acrossPlane: query.acrossPlane ?? section.height };
}

function coefficient(data: BendData, at: At): Coefficient {
  switch (data.kind) {
    case 'same as':
      return coefficient(need(findBend(data.row), 'bends', data.row).loss, at);
    case 'by angle': {
      const reading = lookUp(data.table, at);
      return { c: reading.value, notes: reading.notes, assumed: false };
    }
    case 'angle factor':
      return byAngleFactor(data, at);
  }
}

/**
 * `C(θ) = K(θ) C90`. Where tables stand at several angles, each is divided by its own factor and the
 * quotient is read linearly between them, so that every table is met exactly at its own angle.
 */
function byAngleFactor(data: BendData & { kind: 'angle factor' }, at: At): Coefficient {
  const angle = at.angle as number;
  const factor = lookUp(bendTables.angleFactor.table, { angle });
  const shape = shaped(data, at['r/D'] as number);
  const readings = data.tables.map(({ angle: own, table }) => ({
    own,
    ...lookUp(table, { ...at, 'r/D': shape.radius }),
  }));
  const square = lookUp(
    {
      axes: [{ name: 'angle', unit: 'deg', values: readings.map((reading) => reading.own) }],
      values: readings.map((reading) => reading.value / factorAt(reading.own)),
    },
    { angle },
  );
  const printed = data.tables.some((entry) => entry.angle === angle);
  const turned = printed ? [] : [says.angleFactor(tidy(factor.value), tidy(angle)), ...factor.notes];
  return {
    c: square.value * factor.value * shape.factor,
    notes: [...readings.flatMap((reading) => reading.notes), ...shape.notes, ...turned],
    assumed: shape.factor !== 1,
  };
}

function factorAt(angle: number): number {
  return lookUp(bendTables.angleFactor.table, { angle }).value;
}

/**
 * The r/D at which the table is read, and the factor by which another row's curve over r/D carries it on
 * from there to the r/D asked for.
 */
function shaped(
  data: BendData & { kind: 'angle factor' },
  asked: number,
): { radius: number; factor: number; notes: string[] } {
  const shaper = data.shapedBy === undefined ? undefined : findBend(data.shapedBy);
  const curve = shaper?.loss.kind === 'angle factor' ? shaper.loss.tables[0]?.table : undefined;
  const own = data.tables[0]?.table;
  if (!shaper || !curve || !own) return { radius: asked, factor: 1, notes: [] };
  const [least, most] = data.tableRadius ? [data.tableRadius, data.tableRadius] : rangeOf(own, 'r/D');
  const radius = Math.min(Math.max(asked, least), most);
  if (radius === asked) return { radius, factor: 1, notes: [] };
  const there = lookUp(curve, { 'r/D': asked });
  return {
    radius,
    factor: there.value / lookUp(curve, { 'r/D': radius }).value,
    notes: [says.otherRadius(tidy(radius), tidy(asked), lower(shaper.name)), ...there.notes],
  };
}

function partOf(data: BendData, c: number, section: Section): LossPart {
  if (data.kind !== 'by angle') return { kind: 'local', c, area: area(section) };
  const { axes, values } = bendTables[data.reynolds].table;
  return {
    kind: 'reynolds-local',
    c,
    area: area(section),
    hydraulicDiameter: hydraulicDiameter(section),
    reynolds: axes[0]?.values ?? [],
    factor: values as readonly number[],
  };
}

function label(
  row: BendRow,
  angle: number,
  radiusRatio: number,
  sides: { inPlane: number; acrossPlane: number },
): string {
  const start = says.turned(formatAngle(angle), lower(row.name));
  if (row.defaultRadiusRatio === 0) return start;
  if (row.section !== 'rectangular') return says.round(start, tidy(radiusRatio));
  const { hardWay, easyWay, rectangular } = says;
  const { inPlane, acrossPlane } = sides;
  const way = inPlane > acrossPlane ? hardWay : inPlane < acrossPlane ? easyWay : rectangular;
  return way(start, tidy(radiusRatio));
}

function lower(name: string): string {
  return name.charAt(0).toLowerCase() + name.slice(1);
}
