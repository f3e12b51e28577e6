import type { Draft } from 'immer';
import type { Hood, Job } from '../../graph/document.ts';
import { addInline, findScheme, insertNode, setCapOpening, setDuct } from '../../graph/edits/index.ts';
import { inferRoute } from '../../graph/infer.ts';
import { lerp } from '../../graph/vector.ts';
import { findCap } from '../../hydraulics/catalogue.ts';
import { area } from '../../hydraulics/section.ts';
import type { Section } from '../../hydraulics/types.ts';
import { chokedHood, slowerHood } from './fan-side.ts';
import { causeRow, type Fault } from './types.ts';

/** A house to judge tightness by where the job has none: an ordinary one, assumed. */
export const assumedHouse = {
  volume: 400,
  ach50: 8,
  leakageExponent: 0.65,
  storeys: 1,
  otherExhaust: [],
  makeUpAir: null,
  combustion: [],
} satisfies Job['house'];

/** C of an opening of which `blocked` (0 to below 1) is closed, on the whole opening: Blevins, square-edged grille. */
export function blockedC(blocked: number): number {
  const free = 1 - blocked;
  return (0.5 * blocked + 1 - free ** 2) / free ** 2;
}

/**
 * Puts a fault into a scheme of the job, as an edit: a plate in the duct, a smaller opening or section, a hole,
 * a fan with another curve, a tighter house. Size 0 leaves the scheme as drawn.
 *
 * @param before the job that the draft was made from
 */
export function plantFault(draft: Draft<Job>, before: Job, schemeId: string, fault: Fault): void {
  if (fault.size <= 0) return;
  const { name } = causeRow(fault.cause);
  const node = fault.node ?? '';
  const segment = fault.segment ?? '';
  const leg = inferRoute(before, schemeId).segments.get(segment);
  switch (fault.cause) {
    case 'stuck-flap':
    case 'crushed-flexible': {
      const at = fault.along ?? 0;
      addInline(draft, schemeId, segment, { kind: 'perforated-plate', at, name, freeArea: 1 - fault.size });
      return;
    }
    case 'blocked-cap': {
      const drawn = findScheme(draft, schemeId).nodes.find((each) => each.id === node);
      if (!leg || !drawn) return;
      const whole = drawn.capOpening ?? area(leg.section) * (findCap(drawn.cap ?? '')?.openingRatio ?? 1);
      setCapOpening(draft, schemeId, node, whole * (1 - fault.size));
      return;
    }
    case 'hidden-section':
      if (leg) setDuct(draft, schemeId, [segment], scaled(leg.section, 1 - fault.size));
      return;
    case 'leak':
      plantLeak(draft, before, schemeId, fault);
      return;
    case 'slow-fan':
      replaceHoodAt(draft, before, schemeId, node, (hood) => slowerHood(hood, 1 - fault.size));
      return;
    case 'dirty-filter':
      replaceHoodAt(draft, before, schemeId, node, (hood) => chokedHood(hood, blockedC(fault.size)));
      return;
    case 'tight-house': {
      const house = before.house ?? assumedHouse;
      draft.house = { ...structuredClone(house), ach50: house.ach50 * (1 - fault.size) };
      return;
    }
  }
}

function scaled(section: Section, by: number): Section {
  if (section.shape === 'round') return { shape: 'round', diameter: section.diameter * by };
  return { shape: section.shape, width: section.width * by, height: section.height * by };
}

/** A hole in the middle of a leg, its area the given share of the duct's. */
function plantLeak(draft: Draft<Job>, before: Job, schemeId: string, fault: Fault): void {
  const route = inferRoute(before, schemeId);
  const leg = route.segments.get(fault.segment ?? '');
  const from = leg && route.nodes.get(leg.from)?.at;
  const to = leg && route.nodes.get(leg.to)?.at;
  if (!leg || !from || !to) return;
  const { node } = insertNode(draft, schemeId, leg.id, lerp(from, to, 0.5));
  const hole = findScheme(draft, schemeId).nodes.find((each) => each.id === node);
  if (hole) hole.leak = area(leg.section) * fault.size;
}

/** The hood keeps its id, and so stands in every scheme; `asFound` gives a scheme a hood of its own. */
function replaceHoodAt(
  draft: Draft<Job>,
  before: Job,
  schemeId: string,
  node: string,
  made: (hood: Hood) => Hood,
): void {
  const id = before.schemes
    .find((scheme) => scheme.id === schemeId)
    ?.nodes.find((each) => each.id === node)?.hood;
  const index = before.hoods.findIndex((hood) => hood.id === id);
  const hood = before.hoods[index];
  if (hood) draft.hoods[index] = structuredClone(made(hood));
}
