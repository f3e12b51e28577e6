import { requiredAirflow } from '../advice/required.ts';
import { explained } from '../graph/derive/derive.ts';
import type { Job } from '../graph/document.ts';
import type {
  FittingResult,
  HouseResult,
  SchemeSolution,
  SegmentResult,
  SoundAt,
  SpeedResult,
} from '../graph/solution.ts';
import { cautionLines } from '../words/cautions.ts';
import type { SolvedJob } from './solve.ts';

/**
 * The results as plain data for `--json`: SI, one entry a scheme, in it one a hood and speed.
 *
 * @param explain adds to each speed the derivation of its every figure
 */
export function solutionJson({ job, schemes }: SolvedJob, explain: boolean) {
  const { rules, governing } = requiredAirflow(job.kitchen);
  return {
    title: job.title,
    units: {
      flow: 'm3/s',
      velocity: 'm/s',
      pressure: 'Pa',
      lossPerMetre: 'Pa/m',
      length: 'm',
      temperature: '°C',
      sound: 'dBA',
    },
    cautions: cautionLines(),
    required: { flow: governing.flow, governing: governing.id, rules },
    schemes: schemes.map(({ name, solution }) => schemeJson(job, name, solution, explain)),
  };
}

function schemeJson(job: Job, name: string, solution: SchemeSolution, explain: boolean) {
  const { schemeId, findings, speeds, air } = solution;
  return {
    id: schemeId,
    name,
    air,
    findings,
    speeds: speeds.map((speed, k) => ({
      ...speedJson(speed),
      ...(explain ? { derivations: explained(job, solution, k) } : {}),
    })),
  };
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
    iterations: outcome.iterations,
    rounds: outcome.rounds.count,
    path: outcome.path,
    boosters: outcome.boosters,
    house: outcome.house && houseJson(outcome.house),
    sound: {
      cook: soundJson(outcome.sound.cook),
      outside: soundJson(outcome.sound.outside),
      uncertainty: outcome.sound.uncertainty,
      assumptions: outcome.sound.assumptions,
    },
    otherFlows: outcome.stall.flatMap((note) => note.otherFlows),
    segments: [...outcome.segments.values()].map(segmentJson),
    fittings: outcome.fittings.map(fittingJson),
  };
}

/** `pressure` is against outdoors: below zero where the house is drawn down. */
function houseJson({ pressure, leakage, makeUp, hoods, otherExhaust, limit, makeUpNeeded }: HouseResult) {
  return { pressure, leakage, makeUp, hoods, otherExhaust, limit, makeUpNeeded };
}

function soundJson({ level, sones, byCause }: SoundAt) {
  return { level, sones, byCause: Object.fromEntries(byCause) };
}

function segmentJson({ provenance, share: _, ...result }: SegmentResult) {
  return { ...result, source: provenance.source };
}

function fittingJson({
  at,
  segment,
  kind,
  label,
  c,
  flow,
  velocity,
  loss,
  equivalentLength,
  provenance,
}: FittingResult) {
  return { at, segment, kind, label, c, flow, velocity, loss, equivalentLength, source: provenance.source };
}
