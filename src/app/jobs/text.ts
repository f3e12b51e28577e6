import type { SchemeSummary } from '../../files/jobs/cards.ts';
import { changesOf, legsOf } from '../../files/jobs/changes.ts';
import { formatFlow, formatMoment, formatNumber, type System } from '../../units/index.ts';
import { words } from '../../words/index.ts';

const { view, versions } = words.jobs;

/** Bytes as people say them: "8 KB", "1.2 MB". */
export function sizeText(bytes: number): string {
  const units = words.jobs.bytes;
  const kinds = [units.kilo, units.mega, units.giga];
  let value = Math.max(bytes, 1) / 1000;
  let kind = 0;
  while (value >= 999.5 && kind < kinds.length - 1) {
    value /= 1000;
    kind += 1;
  }
  return kinds[kind]?.(formatNumber(value, kind > 0 && value < 99.5 ? 1 : 0)) ?? '';
}

export function whenText(at: number): string {
  return formatMoment(new Date(at));
}

/** "9 legs, 417 cfm": the first scheme, and how many there are where there are more. */
export function summaryText(summary: readonly SchemeSummary[], units: System): string {
  const [first] = summary;
  if (!first) return '';
  const one = view.summary(view.legs(first.legs), first.flow === null ? null : formatFlow(first.flow, units));
  return summary.length > 1 ? `${one}; ${view.schemes(summary.length)}` : one;
}

/** How a version differs from what is on the board, in one line. */
export function againstText(
  then: readonly SchemeSummary[],
  now: readonly SchemeSummary[],
  units: System,
): string {
  const { schemes, legs, flow } = changesOf(then, now);
  const changes: string[] = [];
  if (schemes !== 0)
    changes.push(schemes > 0 ? versions.moreSchemes(schemes) : versions.fewerSchemes(-schemes));
  if (legs !== 0) changes.push(legs > 0 ? versions.moreLegs(legs) : versions.fewerLegs(-legs));
  const air = formatFlow(Math.abs(flow ?? 0), units);
  if (flow !== null && !/^0 /.test(air))
    changes.push(flow > 0 ? versions.moreAir(air) : versions.lessAir(air));
  return changes.length === 0 ? versions.alike : versions.against(changes);
}

/** "11 legs in 2 schemes, 417 cfm" of a version: the air is that of the first. */
export function versionText(summary: readonly SchemeSummary[], units: System): string {
  const flow = summary[0]?.flow ?? null;
  const legs = view.legs(legsOf(summary));
  const what = summary.length > 1 ? versions.inSchemes(legs, view.schemes(summary.length)) : legs;
  return versions.is(what, flow === null ? null : formatFlow(flow, units));
}
