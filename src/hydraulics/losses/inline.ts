import { words } from '../../words/index.ts';
import { findInline, findMaterial, type InlineData, type InlineRow, need } from '../catalogue.ts';
import { area, hydraulicDiameter } from '../section.ts';
import type { LocalLoss, LossPart, Section } from '../types.ts';
import { lookUp, tidy } from './table.ts';

const says = words.losses.inline;

/** What a data sheet says of a part: a coefficient, a loss (Pa) at a flow (m3/s), or an equivalent length (m). */
export type UserLoss =
  | { readonly c: number }
  | { readonly loss: number; readonly atFlow: number }
  | { readonly equivalentLength: number };

export interface InlineQuery {
  /** Catalogue id, or `user`. */
  readonly kind: string;
  readonly section: Section;
  readonly name?: string | undefined;
  /** Blade angle of a damper, degrees from open. */
  readonly angle?: number | undefined;
  /** Free-area ratio of a screen or a perforated plate. */
  readonly freeArea?: number | undefined;
  readonly user?: UserLoss | undefined;
  /** Roughness (m) and friction multiplier of the duct that an equivalent length is of; galvanized where absent. */
  readonly roughness?: number | undefined;
  readonly multiplier?: number | undefined;
}

interface Piece {
  readonly part: LossPart;
  readonly c: number;
  readonly detail?: string;
  readonly notes: readonly string[];
}

/** Standard air, at which a data sheet's loss is taken to be rated, kg/m3. */
const RATED_DENSITY = 1.2;

/**
 * Loss of a part in the run, on the duct's own section: a row of the catalogue, or with `user` given the
 * figure of its data sheet instead. Refuses a kind that the catalogue does not have, and `user` without a figure.
 */
export function inlineLoss(query: InlineQuery): LocalLoss {
  const { section } = query;
  if (query.user) return userLoss(query, query.user);
  if (query.kind === 'user')
    throw new RangeError('a user part needs a C, a loss at a flow, or an equivalent length');
  const row = need(findInline(query.kind), 'parts in line', query.kind);
  const piece = catalogued(row.loss, query);
  return {
    parts: [piece.part],
    c: piece.c,
    section,
    includesArcFriction: row.includesArcFriction,
    label: named(row, query, piece.detail),
    provenance: {
      row: `inline/${row.id}`,
      source: row.source,
      sourceKind: row.sourceKind,
      notes: piece.notes,
    },
  };
}

function named(row: InlineRow, query: InlineQuery, detail: string | undefined): string {
  return [query.name ?? row.name, ...(detail === undefined ? [] : [detail])].join(', ');
}

function catalogued(data: InlineData, query: InlineQuery): Piece {
  const local = (c: number): LossPart => ({ kind: 'local', c, area: area(query.section) });
  switch (data.kind) {
    case 'constant':
      return { part: local(data.c), c: data.c, notes: [] };
    case 'flap': {
      const { openingPressure, c } = data;
      return {
        part: { kind: 'flap', openingPressure, c, area: area(query.section) },
        c,
        notes: [says.openFlap(tidy(openingPressure))],
      };
    }
    case 'damper': {
      const angle = query.angle ?? data.default;
      const { value, notes } = lookUp(data.table, { angle });
      const shape = query.section.shape === 'round' ? [] : [says.roundBlade];
      return {
        part: local(value),
        c: value,
        detail: says.fromOpen(tidy(angle)),
        notes: [...notes, ...shape],
      };
    }
    case 'free area': {
      const free = query.freeArea ?? data.default;
      const { value, notes } = lookUp(data.table, { 'free area': free });
      return { part: local(value), c: value, detail: says.free(tidy(100 * free)), notes };
    }
    case 'plate': {
      const free = query.freeArea ?? data.default;
      const c = plateC(free);
      return { part: local(c), c, detail: says.free(tidy(100 * free)), notes: [] };
    }
  }
}

/** C of a square-edged perforated plate by free-area ratio (above 0 to 1), on the duct. Source: Blevins. */
function plateC(free: number): number {
  if (!(free > 0 && free <= 1))
    throw new RangeError(`a free-area ratio lies above 0 and at most at 1: ${free}`);
  return (0.5 * (1 - free) + 1 - free ** 2) / free ** 2;
}

function userLoss(query: InlineQuery, user: UserLoss): LocalLoss {
  const { section } = query;
  const duct = area(section);
  const made = (part: LossPart, c: number, note: string): LocalLoss => ({
    parts: [part],
    c,
    section,
    includesArcFriction: true,
    label: query.name ?? findInline(query.kind)?.name ?? says.userPart,
    provenance: {
      row: 'inline/user',
      source: says.byUser,
      sourceKind: 'assumption',
      notes: [note],
    },
  });
  if ('c' in user) return made({ kind: 'local', c: user.c, area: duct }, user.c, says.onDuct(tidy(user.c)));
  if ('loss' in user) {
    const velocityPressure = (RATED_DENSITY / 2) * (user.atFlow / duct) ** 2;
    return made(
      { kind: 'measured', loss: user.loss, atFlow: user.atFlow, density: RATED_DENSITY },
      user.loss / velocityPressure,
      says.atFlow(tidy(user.loss), tidy(user.atFlow)),
    );
  }
  const diameter = hydraulicDiameter(section);
  const roughness = query.roughness ?? need(findMaterial('galvanized'), 'materials', 'galvanized').roughness;
  const multiplier = query.multiplier ?? 1;
  const length = user.equivalentLength;
  return made(
    { kind: 'duct', length, hydraulicDiameter: diameter, area: duct, roughness, multiplier },
    (multiplier * fullyRough(roughness / diameter) * length) / diameter,
    says.asLength(tidy(length)),
  );
}

/** Friction factor at full turbulence, `(-2 log10(ε/3.7D))^-2`: Colebrook-White without its Reynolds term. */
function fullyRough(relativeRoughness: number): number {
  return (2 * Math.log10(relativeRoughness / 3.7)) ** -2;
}
