import type { Draft } from 'immer';
import { current } from 'immer';
import type { Job } from '../../graph/document.ts';
import { duplicateScheme, freshId } from '../../graph/edits/index.ts';
import { inferRoute } from '../../graph/infer.ts';
import { placesOf } from '../../graph/places.ts';
import { sectionWords } from '../../graph/sections.ts';
import { area, hydraulicDiameter } from '../../hydraulics/section.ts';
import { formatArea, formatDiameter, formatNumber, formatTrimmed } from '../../units/index.ts';
import { assumedHouse, plantFault } from './plant.ts';
import { causeRow, type Fault, type Probe } from './types.ts';

const percent = (share: number) => `${Math.round(100 * share)} %`;

/** The size of a fault in words: "62 % of the opening closed", "6 1/4" instead of 8"". */
export function sizeWords(job: Job, schemeId: string, fault: Fault): string {
  const leg = inferRoute(job, schemeId).segments.get(fault.segment ?? '');
  switch (causeRow(fault.cause).size) {
    case 'blocked':
      return `${percent(fault.size)} of the opening closed`;
    case 'smaller': {
      if (!leg) return `${percent(fault.size)} smaller across`;
      const found = formatDiameter(hydraulicDiameter(leg.section) * (1 - fault.size), job.units);
      return `about ${found} across instead of ${sectionWords(leg.section, job.units)}`;
    }
    case 'hole':
      return leg
        ? `a hole of about ${formatArea(area(leg.section) * fault.size, job.units)}`
        : `a hole of ${percent(fault.size)} of the duct`;
    case 'slower':
      return `${percent(fault.size)} slower than rated`;
    case 'tighter': {
      const drawn = (job.house ?? assumedHouse).ach50;
      return `about ${formatNumber(drawn * (1 - fault.size), 1)} air changes an hour at 50 Pa instead of ${formatTrimmed(drawn, 4)}`;
    }
  }
}

/** Where a fault sits, in words. */
export function siteWords(job: Job, schemeId: string, fault: Fault): string {
  const places = placesOf(inferRoute(job, schemeId), job.blocks);
  if (fault.cause === 'tight-house') return 'the house';
  if (fault.node !== undefined) return places.node(fault.node);
  return fault.segment === undefined ? 'the run' : places.leg(fault.segment);
}

/** What is measured, in words: "static pressure before the cap at boost". */
export function probeWords(job: Job, schemeId: string, probe: Probe, speedName: string): string {
  const places = placesOf(inferRoute(job, schemeId), job.blocks);
  const how =
    probe.condition === 'window open'
      ? ', with a window wide open'
      : probe.condition === 'filters out'
        ? ', with the filters out'
        : '';
  const what = {
    'hood air': 'air at the hood',
    'cap air': 'air at the cap',
    'collar static': 'static pressure at the collar',
    'duct static': `static pressure in the duct just before ${places.node(probe.node ?? '')}`,
    'house pressure': 'pressure of the kitchen against outdoors',
    sound: "sound at the cook's head",
  }[probe.kind];
  return `${what} at ${speedName}${how}`;
}

/**
 * Copies a scheme and puts a fault into the copy, and gives its id: the run as it was found. A fan that is
 * not as rated becomes a hood of its own; a tight house is the house of every scheme.
 */
export function asFound(draft: Draft<Job>, schemeId: string, fault: Fault): string {
  const name = draft.schemes.find((scheme) => scheme.id === schemeId)?.name ?? '';
  const id = duplicateScheme(draft, schemeId, `${name}, as found`);
  const node = draft.schemes.find((scheme) => scheme.id === id)?.nodes.find((each) => each.id === fault.node);
  const hood = draft.hoods.find((each) => each.id === node?.hood);
  if (node && hood && (fault.cause === 'slow-fan' || fault.cause === 'dirty-filter')) {
    const own = freshId('hood-', draft.hoods);
    draft.hoods.push({ ...structuredClone(current(hood)), id: own, name: `${hood.name}, as found` });
    node.hood = own;
  }
  plantFault(draft, current(draft) as Job, id, fault);
  return id;
}
