import supports from '#shared/supports.json' with { type: 'json' };
import weights from '#shared/weights.json' with { type: 'json' };
import type { Job } from '../../graph/document.ts';
import { findMaterial } from '../../hydraulics/catalogue.ts';
import type { SourceKind } from '../../hydraulics/types.ts';
import { words } from '../../words/index.ts';
import { partsOf } from '../parts.ts';
import { sealing } from './makes.ts';
import { cuttingOf } from './plan.ts';
import { weightSource } from './weight.ts';

const says = words.partsList.sources;

/** Where a rule comes from by which parts are counted, cut or weighed. */
export interface PartSource {
  /** What the rule is about: "Spiral pipe". */
  readonly what: string;
  readonly source: string;
  readonly sourceKind: SourceKind;
  readonly notes: readonly string[];
}

/** The rules behind the parts list of a scheme, each once. @throws RangeError if the job has no scheme of that id */
export function partSources(job: Job, schemeId: string): readonly PartSource[] {
  const { plans } = cuttingOf(job, schemeId);
  const kinds = new Set(partsOf(job, schemeId).map(({ kind }) => kind));
  const found: PartSource[] = plans.map(({ make }) => ({
    what: make.name,
    source: make.source,
    sourceKind: make.sourceKind,
    notes: make.notes,
  }));
  const add = (
    what: string,
    row: { readonly source: string; readonly sourceKind: string },
    notes: readonly string[] = [],
  ) => found.push({ what, source: row.source, sourceKind: row.sourceKind as SourceKind, notes });
  if (kinds.has('hanger')) add(says.hangers, supports.hangerSpacing, supports.hangerSpacing.notes);
  if (kinds.has('sealant') || kinds.has('tape')) add(says.sealing, sealing);
  for (const { material } of plans) {
    const row = weightSource(material);
    if (row) add(says.weightOf((findMaterial(material)?.name ?? material).toLowerCase()), row);
  }
  if (kinds.has('bend') || kinds.has('transition') || kinds.has('junction'))
    add(says.fittings, weights.fittings);
  if (kinds.has('insulation')) add(says.wrap, weights.wrap);
  return found.filter(({ what }, i) => found.findIndex((one) => one.what === what) === i);
}
