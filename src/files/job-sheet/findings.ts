import { checkCodes } from '../../advice/codes/check.ts';
import type { CodeResult } from '../../advice/codes/types.ts';
import { sourceWords } from '../../graph/derive/text.ts';
import { sentence } from '../../graph/places.ts';
import type { Finding, Severity } from '../../graph/route.ts';
import { rules } from '../../graph/rules.ts';
import { words } from '../../words/index.ts';
import type { Subject } from './subject.ts';
import { NONE, tableOf } from './tables.ts';
import type { SheetBlock, SheetFinding } from './types.ts';

const say = words.jobSheet.findings;

const gravest: readonly Severity[] = ['danger', 'error', 'warning', 'note'];
/** Places that a finding names before it only counts the rest. */
const MOST_PLACES = 3;

/** What is wrong or open and what to do about it, then every rule that the scheme was held against. */
export function findingBlocks(subject: Subject): SheetBlock[] {
  const { job, solution } = subject;
  const findings = [...solution.findings].sort(
    (a, b) => gravest.indexOf(a.severity) - gravest.indexOf(b.severity),
  );
  const results = checkCodes(job, solution);
  const bad = results.filter(({ state }) => state === 'fails' || state === 'cannot tell');
  const off = rules.length - results.length;
  return [
    { kind: 'heading', text: say.heading },
    { kind: 'findings', findings: findings.map((one) => findingOf(one, subject)), none: say.none },
    { kind: 'heading', text: say.codes },
    { kind: 'text', text: off > 0 ? `${say.codesLead} ${say.notAllOn(off)}` : say.codesLead },
    { kind: 'findings', findings: bad.map((one) => brokenRule(one, subject)), none: say.open },
    ruleTable(results),
  ];
}

function findingOf(
  { id, severity, message, remedy, source, nodes, segments }: Finding,
  subject: Subject,
): SheetFinding {
  return {
    id,
    severity,
    mark: say.severity[severity],
    message,
    place: placeOf(nodes, segments, subject),
    remedy: remedy ?? '',
    source: source ?? '',
  };
}

function brokenRule(result: CodeResult, subject: Subject): SheetFinding {
  const { state, name, message, measured, remedy, nodes, segments } = result;
  const said = `${name}. ${message}`;
  return {
    id: `rule/${result.rule}`,
    severity: state === 'fails' ? 'warning' : 'note',
    mark: say.state[state],
    message: measured && result.limit ? say.foundAndLimit(said, measured, limitOf(result)) : said,
    place: placeOf(nodes, segments, subject),
    remedy,
    source: editionOf(result),
  };
}

function limitOf({ limit, overridden }: CodeResult): string {
  if (limit === null) return NONE;
  return overridden ? say.own(limit) : limit;
}

function editionOf({ source, sourceKind, edition }: CodeResult): string {
  return say.edition(source, sourceWords[sourceKind], edition);
}

function ruleTable(results: readonly CodeResult[]): SheetBlock {
  return tableOf(
    'rules',
    results,
    [
      { id: 'rule', head: say.rule, weight: 30, cell: ({ name }) => name },
      {
        id: 'state',
        head: say.stateHead,
        weight: 10,
        cell: ({ state }) => ({ text: say.state[state], ...(state === 'fails' ? { poor: true } : {}) }),
      },
      { id: 'found', head: say.found, weight: 12, cell: ({ measured }) => measured ?? NONE },
      { id: 'limit', head: say.limit, weight: 14, cell: limitOf },
      { id: 'source', head: say.source, weight: 44, cell: editionOf },
    ],
    { rowId: ({ rule }) => rule },
  );
}

/** Where it is, in trade words; empty where it is the whole run or no place of the route. */
function placeOf(
  nodes: readonly string[],
  segments: readonly string[],
  { places, solution }: Subject,
): string {
  const { route } = solution;
  if (nodes.length === 0 && segments.length === route.segments.size) return '';
  const all = [
    ...nodes.filter((id) => route.nodes.has(id)).map((id) => places.turn(id)),
    ...segments.filter((id) => route.segments.has(id)).map((id) => places.leg(id)),
  ];
  const named = [...new Set(all)];
  if (named.length === 0) return '';
  return sentence(say.place(named.slice(0, MOST_PLACES), Math.max(0, named.length - MOST_PLACES)));
}
