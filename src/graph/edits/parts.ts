import type { Draft } from 'immer';
import type { Section } from '../../hydraulics/types.ts';
import type { BendChoice, InlinePart, Segment, TransitionChoice } from '../document.ts';
import {
  chosenFrom,
  type DraftJob,
  type DraftScheme,
  findNode,
  findScheme,
  findSegment,
  findSegments,
  keepFittingsOn,
  lengthOf,
  plainCopy,
  segmentsAt,
  setFittings,
} from './find.ts';

/** Some segments, or the whole scheme. */
export type Stretch = readonly string[] | 'all';

/**
 * Gives duct a section. For the whole scheme it becomes the scheme's own, and no segment differs; a
 * segment that is given the scheme's own section stops differing from it.
 */
export function setDuct(job: DraftJob, schemeId: string, segments: Stretch, duct: Section): void {
  const scheme = findScheme(job, schemeId);
  if (segments === 'all') scheme.defaults.duct = { ...duct };
  for (const segment of chosen(scheme, segments)) {
    if (segments === 'all' || sameSection(duct, scheme.defaults.duct)) delete segment.duct;
    else segment.duct = { ...duct };
  }
}

/** Gives duct a material: a catalogue id of `shared/materials.json`. */
export function setMaterial(job: DraftJob, schemeId: string, segments: Stretch, material: string): void {
  const scheme = findScheme(job, schemeId);
  if (segments === 'all') scheme.defaults.material = material;
  for (const segment of chosen(scheme, segments)) {
    if (segments === 'all' || material === scheme.defaults.material) delete segment.material;
    else segment.material = material;
  }
}

/** Installed over fully stretched length of flexible duct, 0-1; `null` for none given. */
export function setStretch(job: DraftJob, schemeId: string, segments: Stretch, stretch: number | null): void {
  for (const segment of chosen(findScheme(job, schemeId), segments)) {
    if (stretch === null) delete segment.stretch;
    else segment.stretch = stretch;
  }
}

/** Thickness of insulation, m; 0 for none. */
export function setInsulation(job: DraftJob, schemeId: string, segments: Stretch, thickness: number): void {
  for (const segment of chosen(findScheme(job, schemeId), segments)) {
    if (thickness === 0) delete segment.insulation;
    else segment.insulation = thickness;
  }
}

/** Chooses the bend at a node; `null` leaves it to the scheme. */
export function setBend(job: DraftJob, schemeId: string, nodeId: string, bend: BendChoice | null): void {
  const node = findNode(findScheme(job, schemeId), nodeId);
  if (bend) node.bend = { ...bend };
  else delete node.bend;
}

/** Chooses the bends at several nodes in one pass. */
export function setBends(job: DraftJob, schemeId: string, choices: ReadonlyMap<string, BendChoice>): void {
  const chosenNodes = chosenFrom(findScheme(job, schemeId).nodes, ({ id }) => choices.has(id));
  for (const node of chosenNodes) {
    const choice = choices.get(node.id);
    if (choice) node.bend = { ...choice };
  }
}

/** Chooses the bend of the whole scheme, and takes off every choice that a node made for itself. */
export function setEveryBend(job: DraftJob, schemeId: string, bend: BendChoice): void {
  const scheme = findScheme(job, schemeId);
  scheme.defaults.bend = { ...bend };
  for (const node of scheme.nodes) delete node.bend;
}

/** Chooses how sections change at a node; `null` leaves it to the program. */
export function setTransition(
  job: DraftJob,
  schemeId: string,
  nodeId: string,
  transition: TransitionChoice | null,
): void {
  const node = findNode(findScheme(job, schemeId), nodeId);
  if (transition) node.transition = { ...transition };
  else delete node.transition;
}

/**
 * Puts a cap (a catalogue id of `shared/caps.json`) on the end of a run, or takes it off (`null`).
 * `false`, and no change, at a hood, a fan, or a node where several legs meet.
 */
export function setCap(job: DraftJob, schemeId: string, nodeId: string, capId: string | null): boolean {
  const scheme = findScheme(job, schemeId);
  const node = findNode(scheme, nodeId);
  if (node.role === 'hood' || node.role === 'fan') return false;
  if (capId === null) {
    node.role = 'turn';
    delete node.cap;
    delete node.capOpening;
    return true;
  }
  if (segmentsAt(scheme, nodeId).length > 1) return false;
  if (node.cap !== capId) delete node.capOpening;
  node.role = 'cap';
  node.cap = capId;
  return true;
}

/** Free opening of a node's cap, m2; `null` for what its catalogue row says. */
export function setCapOpening(job: DraftJob, schemeId: string, nodeId: string, area: number | null): void {
  const node = findNode(findScheme(job, schemeId), nodeId);
  if (area === null) delete node.capOpening;
  else node.capOpening = area;
}

/** Puts a part in line and gives its place among the segment's fittings, which stand in order. */
export function addInline(job: DraftJob, schemeId: string, segmentId: string, part: InlinePart): number {
  const scheme = findScheme(job, schemeId);
  const segment = findSegment(scheme, segmentId);
  const at = Math.min(Math.max(0, part.at), lengthOf(scheme, segment));
  const others = plainCopy(segment).fittings ?? [];
  setFittings(segment, [...others, { ...part, at }]);
  return others.filter((other) => other.at <= at).length;
}

/** Changes a part in line, which loses a field that is given as undefined; the parts stay in order along the segment. */
export function changeInline(
  job: DraftJob,
  schemeId: string,
  segmentId: string,
  index: number,
  change: { readonly [F in keyof InlinePart]?: InlinePart[F] | undefined },
): void {
  const scheme = findScheme(job, schemeId);
  const segment = findSegment(scheme, segmentId);
  const fittings = plainCopy(segment).fittings ?? [];
  setFittings(
    segment,
    fittings.map((f, i) => (i === index ? changed(f, change) : f)),
  );
  keepFittingsOn(scheme, segment);
}

function changed(part: InlinePart, change: object): InlinePart {
  const fields = Object.entries({ ...part, ...change }).filter(([, value]) => value !== undefined);
  return Object.fromEntries(fields) as InlinePart;
}

/** Takes a part out of the line. */
export function removeInline(job: DraftJob, schemeId: string, segmentId: string, index: number): void {
  const segment = findSegment(findScheme(job, schemeId), segmentId);
  setFittings(
    segment,
    (segment.fittings ?? []).filter((_, i) => i !== index),
  );
}

function chosen(scheme: DraftScheme, segments: Stretch): Draft<Segment>[] {
  return segments === 'all' ? scheme.segments : findSegments(scheme, segments);
}

function sameSection(a: Section, b: Section): boolean {
  if (a.shape === 'round' || b.shape === 'round')
    return a.shape === 'round' && b.shape === 'round' && a.diameter === b.diameter;
  return a.shape === b.shape && a.width === b.width && a.height === b.height;
}
