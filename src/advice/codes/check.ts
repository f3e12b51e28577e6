import type { Job } from '../../graph/document.ts';
import { schemeOf } from '../../graph/infer.ts';
import { placesOf } from '../../graph/places.ts';
import { type RuleKind, type RuleRow, type RuleUnit, ruleLimit, ruleOn, rules } from '../../graph/rules.ts';
import { placedHoods } from '../../graph/setting.ts';
import type { SchemeSolution } from '../../graph/solution.ts';
import { formatFlow, formatLength, formatTrimmed, formatVelocity } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { clearance } from './clearance.ts';
import { damper, ownDuct, screen } from './exit.ts';
import { leastAir, mountingLeast, mountingMost, overhang } from './kitchen.ts';
import { ductLength, runLength, straight, turns } from './run.ts';
import type { Check, Checked, CodeResult } from './types.ts';

const says = words.rules.check;

/** A rule that the findings of the drawing and the solve already hold: it is met where none of them speaks. */
const byFindings: Check = ({ solution, runs }, rule) => {
  if (!runs.some((run) => run.legs.length > 0)) return { state: 'not applicable', message: says.noRun };
  const about = solution.findings.filter(({ rule: id }) => rule.findings?.includes(id));
  const open = solution.findings.filter(({ rule: id }) => rule.unknown?.includes(id));
  const doubt = rule.doubtNotes ? about.filter(({ severity }) => severity === 'note') : [];
  const broken = about.filter((finding) => !doubt.includes(finding));
  const [first] = [...broken, ...doubt, ...open];
  if (!first) return { state: 'meets', message: rule.what };
  return {
    state: broken.length > 0 ? 'fails' : 'cannot tell',
    message: first.message,
    remedy: first.remedy ?? rule.remedy,
    nodes: [...new Set(broken.length > 0 ? broken.flatMap(({ nodes }) => nodes) : first.nodes)],
    segments: [...new Set(broken.length > 0 ? broken.flatMap(({ segments }) => segments) : first.segments)],
  };
};

const checks: Readonly<Record<RuleKind, Check>> = {
  findings: byFindings,
  'duct length': ductLength,
  'run length': runLength,
  turns,
  straight,
  clearance,
  damper,
  screen,
  'own duct': ownDuct,
  'least air': leastAir,
  overhang,
  'mounting least': mountingLeast,
  'mounting most': mountingMost,
};

/**
 * Holds a solved scheme against every rule that the job's profile has on, in the order of `shared/rules.json`.
 * Advice with its sources; the adopted code, the hood's instructions and the local authority decide.
 */
export function checkCodes(job: Job, solution: SchemeSolution): CodeResult[] {
  const scheme = schemeOf(job, solution.schemeId);
  const { route } = solution;
  const runs = placedHoods(scheme, job.hoods).map(({ node, hood }) => {
    const solved = solution.speeds.flatMap(({ hood: id, outcome }) =>
      id === hood.id && outcome.solved && outcome.flow > 0 ? [outcome] : [],
    );
    const legs = (solved.at(-1)?.path ?? []).flatMap((id) => route.segments.get(id) ?? []);
    return { node, hood, legs, solved };
  });
  const checked: Checked = { job, scheme, solution, runs, places: placesOf(route, job.blocks) };
  return rules.filter(({ id }) => ruleOn(job.profile, id)).map((rule) => resultOf(checked, rule));
}

function resultOf(checked: Checked, rule: RuleRow): CodeResult {
  const limit = ruleLimit(checked.job.profile, rule.id);
  const said = checks[rule.kind](checked, rule, limit?.value);
  return {
    rule: rule.id,
    name: rule.name,
    remedy: rule.remedy,
    source: rule.source,
    sourceKind: rule.sourceKind,
    edition: rule.edition,
    measured: null,
    nodes: [],
    segments: said.nodes ? [] : wholeRun(checked),
    ...said,
    limit: limit ? limitWords(limit.value, rule.unit, checked.job.units) : null,
    overridden: limit?.overridden ?? false,
  };
}

/** What is said of no place in particular is said of every run. */
function wholeRun({ runs }: Checked): string[] {
  return [...new Set(runs.flatMap(({ legs }) => legs.map(({ id }) => id)))];
}

/** A limit in people's units: "3'-0"", "1,000 fpm to 2,000 fpm", "3 turns". */
export function limitWords(
  limit: NonNullable<RuleRow['limit']>,
  unit: RuleUnit | undefined,
  units: Job['units'],
): string {
  if (typeof limit !== 'number') return limit.map((one) => limitWords(one, unit, units)).join(says.range);
  switch (unit) {
    case 'm':
      return formatLength(limit, units);
    case 'm/s':
      return formatVelocity(limit, units);
    case 'm3/s':
      return formatFlow(limit, units);
    default:
      return says.plain(formatTrimmed(limit), unit ?? '');
  }
}
