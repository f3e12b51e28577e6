import { words } from '../../words/index.ts';
import { findTransition, need, type TransitionRow } from '../catalogue.ts';
import { area } from '../section.ts';
import type { LocalLoss, Section } from '../types.ts';
import { lookUp, type Table, tidy } from './table.ts';

const says = words.losses.transitions;

export interface TransitionQuery {
  /** In the direction of the flow. */
  readonly from: Section;
  readonly to: Section;
  readonly kind: 'abrupt' | 'conical';
  /** Full included angle of the cone, degrees; between different shapes that of the cone of the same areas and length. */
  readonly angle?: number;
}

export interface AreaChange {
  readonly c: number;
  readonly row: TransitionRow;
  readonly label: string;
  readonly notes: readonly string[];
}

/**
 * Loss of a change of section in the direction of the flow, always referred to the smaller section.
 * Contraction by the handbook's table, expansion by Borda-Carnot, eased by the angle of a cone. A change of
 * shape costs at least a small C, however close the areas. No angle means abrupt.
 */
export function transitionLoss(query: TransitionQuery): LocalLoss {
  const { from, to } = query;
  const angle = query.kind === 'abrupt' ? 180 : (query.angle ?? 180);
  const before = area(from);
  const after = area(to);
  const shrinks = after < before;
  const chosen = withShape(
    shrinks ? contraction(before / after, angle) : expansion(before / after, angle),
    query,
  );
  const { row, c } = chosen;
  return {
    parts: [{ kind: 'local', c, area: Math.min(before, after) }],
    c,
    section: after < before ? to : from,
    includesArcFriction: row.includesArcFriction,
    label: chosen.label,
    provenance: {
      row: `transitions/${row.id}`,
      source: row.source,
      sourceKind: row.sourceKind,
      notes: chosen.notes,
    },
  };
}

/**
 * C of a change from one area to another (m2) in the direction of the flow, on the smaller of the two, by
 * included angle in degrees; 180 is abrupt.
 */
export function areaChange(before: number, after: number, angle: number): AreaChange {
  return after < before ? contraction(before / after, angle) : expansion(before / after, angle);
}

/**
 * C of a contraction, on the smaller duct, by area ratio (large over small, at least 1) and included angle in
 * degrees. The table starts at area ratio 2; from 1 to 2, C grows as `1 - A/A1`, the form of the abrupt
 * contraction law. Source: SMACNA 1990, Table 14-12A.
 */
function contraction(areaRatio: number, angle: number): AreaChange {
  const row = need(findTransition('contraction'), 'transitions', 'contraction');
  const eased = areaRatio < 2 ? 1 + 2 * (1 - 1 / areaRatio) : areaRatio;
  const reading = lookUp(row.table as Table, { angle, 'A1/A': eased });
  const notes =
    areaRatio < 2
      ? [...reading.notes.filter((note) => !note.includes('A1/A')), says.between(tidy(areaRatio))]
      : reading.notes;
  return { c: reading.value, row, label: changeLabel('contraction', angle), notes };
}

/** C of an expansion, on the smaller duct, by area ratio (small over large) and angle. Source: Borda-Carnot, and for a cone Crane TP-410 (from memory). */
function expansion(areaRatio: number, angle: number): AreaChange {
  const abrupt = (1 - areaRatio) ** 2;
  const easing = 2.6 * Math.sin((angle * Math.PI) / 360);
  const id = easing < 1 ? 'conical-expansion' : 'abrupt-expansion';
  const notes = easing >= 1 && angle < 180 ? [says.noSaving(tidy(angle))] : [];
  return {
    c: Math.min(1, easing) * abrupt,
    row: need(findTransition(id), 'transitions', id),
    label: changeLabel('expansion', angle),
    notes,
  };
}

function withShape(chosen: AreaChange, { from, to }: TransitionQuery): AreaChange {
  if (from.shape === to.shape) return chosen;
  const label = says.shapeChange(says.shapes[from.shape], says.shapes[to.shape], chosen.label);
  const row = need(findTransition('shape-change'), 'transitions', 'shape-change');
  if (chosen.c >= (row.least ?? 0)) return { ...chosen, label };
  return {
    c: row.least ?? 0,
    row,
    label,
    notes: [says.atLeast(tidy(chosen.c), tidy(row.least ?? 0))],
  };
}

function changeLabel(change: 'contraction' | 'expansion', angle: number): string {
  return angle >= 180 ? says.abrupt[change] : says.gradual[change](tidy(angle));
}
