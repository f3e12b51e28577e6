import type { FittingResult, SchemeSolution, SegmentResult, SpeedResult } from '../graph/solution.ts';
import { cautions, type SolvedJob } from './solve.ts';

/** The results as plain data for `--json`: SI, one entry a scheme, in it one a hood and speed. */
export function solutionJson({ job, schemes }: SolvedJob) {
  return {
    title: job.title,
    units: { flow: 'm3/s', velocity: 'm/s', pressure: 'Pa', lossPerMetre: 'Pa/m', length: 'm' },
    cautions,
    schemes: schemes.map(({ name, solution }) => schemeJson(name, solution)),
  };
}

function schemeJson(name: string, { schemeId, findings, speeds, air }: SchemeSolution) {
  return { id: schemeId, name, air, findings, speeds: speeds.map(speedJson) };
}

function speedJson({ hood, hoodName, name, ratedFlow, outcome }: SpeedResult) {
  const about = { hood, hoodName, name, ratedFlow };
  if (!outcome.solved) {
    return { ...about, flow: null, reason: outcome.reason, totalPressure: null, segments: [], fittings: [] };
  }
  return {
    ...about,
    flow: outcome.flow,
    totalPressure: outcome.totalPressure,
    staticPressure: outcome.staticPressure,
    fastest: outcome.fastest,
    residual: outcome.residual,
    otherFlows: outcome.stall.flatMap((note) => note.otherFlows),
    segments: [...outcome.segments.values()].map(segmentJson),
    fittings: outcome.fittings.map(fittingJson),
  };
}

function segmentJson(result: SegmentResult) {
  const { id, flow, velocity, velocityPressure, frictionLength, frictionLoss, lossPerMetre, reynolds } =
    result;
  return { id, flow, velocity, velocityPressure, frictionLength, frictionLoss, lossPerMetre, reynolds };
}

function fittingJson({
  at,
  kind,
  label,
  c,
  flow,
  velocity,
  loss,
  equivalentLength,
  provenance,
}: FittingResult) {
  return { at, kind, label, c, flow, velocity, loss, equivalentLength, source: provenance.source };
}
