import type { Draft } from 'immer';
import { current } from 'immer';
import type { Job } from '../../graph/document.ts';
import { duplicateScheme, freshId } from '../../graph/edits/index.ts';
import { inferRoute } from '../../graph/infer.ts';
import { placesOf } from '../../graph/places.ts';
import { sectionWords } from '../../graph/sections.ts';
import { area, hydraulicDiameter } from '../../hydraulics/section.ts';
import { formatArea, formatDiameter, formatNumber, formatTrimmed } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { assumedHouse, plantFault } from './plant.ts';
import { causeRow, type Fault, type Probe } from './types.ts';

const says = words.faults.found;

const percent = (share: number) => `${Math.round(100 * share)} %`;

/** The size of a fault in words: "62 % of the opening closed", "6 1/4" instead of 8"". */
export function sizeWords(job: Job, schemeId: string, fault: Fault): string {
  const leg = inferRoute(job, schemeId).segments.get(fault.segment ?? '');
  switch (causeRow(fault.cause).size) {
    case 'blocked':
      return says.closed(percent(fault.size));
    case 'smaller': {
      if (!leg) return says.smaller(percent(fault.size));
      const found = formatDiameter(hydraulicDiameter(leg.section) * (1 - fault.size), job.units);
      return says.across(found, sectionWords(leg.section, job.units));
    }
    case 'hole':
      return leg
        ? says.hole(formatArea(area(leg.section) * fault.size, job.units))
        : says.holeShare(percent(fault.size));
    case 'slower':
      return says.slower(percent(fault.size));
    case 'tighter': {
      const drawn = (job.house ?? assumedHouse).ach50;
      return says.tighter(formatNumber(drawn * (1 - fault.size), 1), formatTrimmed(drawn, 4));
    }
  }
}

/** Where a fault sits, in words. */
export function siteWords(job: Job, schemeId: string, fault: Fault): string {
  const places = placesOf(inferRoute(job, schemeId), job.blocks);
  if (fault.cause === 'tight-house') return says.house;
  if (fault.node !== undefined) return places.node(fault.node);
  return fault.segment === undefined ? says.run : places.leg(fault.segment);
}

/** What is measured, in words: "static pressure before the cap at boost". */
export function probeWords(job: Job, schemeId: string, probe: Probe, speedName: string): string {
  const places = placesOf(inferRoute(job, schemeId), job.blocks);
  const how =
    probe.condition === 'window open'
      ? says.windowOpen
      : probe.condition === 'filters out'
        ? says.filtersOut
        : '';
  const what = {
    'hood air': says.probes.hoodAir,
    'cap air': says.probes.capAir,
    'collar static': says.probes.collarStatic,
    'duct static': says.probes.ductStatic(places.node(probe.node ?? '')),
    'house pressure': says.probes.housePressure,
    sound: says.probes.sound,
  }[probe.kind];
  return says.probe(what, speedName, how);
}

/**
 * Copies a scheme and puts a fault into the copy, and gives its id: the run as it was found. A fan that is
 * not as rated becomes a hood of its own; a tight house is the house of every scheme.
 */
export function asFound(draft: Draft<Job>, schemeId: string, fault: Fault): string {
  const name = draft.schemes.find((scheme) => scheme.id === schemeId)?.name ?? '';
  const id = duplicateScheme(draft, schemeId, says.asFound(name));
  const node = draft.schemes.find((scheme) => scheme.id === id)?.nodes.find((each) => each.id === fault.node);
  const hood = draft.hoods.find((each) => each.id === node?.hood);
  if (node && hood && (fault.cause === 'slow-fan' || fault.cause === 'dirty-filter')) {
    const own = freshId('hood-', draft.hoods);
    draft.hoods.push({ ...structuredClone(current(hood)), id: own, name: says.asFound(hood.name) });
    node.hood = own;
  }
  plantFault(draft, current(draft) as Job, id, fault);
  return id;
}
