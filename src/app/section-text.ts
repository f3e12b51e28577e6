import { sectionWords } from '../graph/sections.ts';
import { ductSizes } from '../hydraulics/catalogue.ts';
import type { Section } from '../hydraulics/types.ts';
import { type Parsed, parseDiameter, type System } from '../units/index.ts';
import { words } from '../words/index.ts';

const says = words.panels.section;

/** The duct sizes of one system of units, as a person picks them from a list. */
export function sizesOf(
  system: System,
): readonly { readonly id: string; readonly name: string; readonly section: Section }[] {
  return ductSizes.filter((row) => row.system === system);
}

/** What stands in a size field: the catalogue's name where it has one, else the measures. */
export function sectionText(section: Section, system: System): string {
  const row = ductSizes.find((size) => size.system === system && sameSection(size.section, section));
  return row?.name ?? sectionWords(section, system);
}

/**
 * A duct's inside section from a catalogue name, `8 in`, `ø200 mm`, `3 1/4 x 10` or `4 x 7 oval`.
 * Refuses sides and diameters that are not lengths of 2 m at most, with a sentence.
 */
export function parseSection(text: string, system: System): Parsed<Section> {
  const typed = text.trim().toLowerCase();
  const row = ductSizes.find((size) => size.name.toLowerCase() === typed);
  if (row) return { ok: true, value: row.section };
  const oval = /\boval\b/.test(typed);
  const bare = typed.replace(/\b(round|rectangular|oval|duct|stack|flat channel)\b/g, '').trim();
  const [first = '', second, ...more] = bare.split(/\s*[x×]\s*/);
  if (more.length > 0) return { ok: false, message: says.refused };
  const a = side(withUnitOf(first, second), system);
  if (!a.ok) return a;
  if (second === undefined) return { ok: true, value: { shape: 'round', diameter: a.value } };
  const b = side(withUnitOf(second, first), system);
  if (!b.ok) return b;
  const [height, width] = [Math.min(a.value, b.value), Math.max(a.value, b.value)];
  return { ok: true, value: { shape: oval ? 'oval' : 'rectangular', width, height } };
}

/** A side as it was typed, or with the other side's unit where it has none of its own: 3 x 10 in. */
function withUnitOf(text: string, other: string | undefined): string {
  const unit = /(?:inch(?:es)?|in|mm|cm|m|"|″|”|'|′|’)\.?$/.exec(other ?? '')?.[0] ?? '';
  return /[\d.¼-¾⅐-⅞]$/.test(text) ? `${text} ${unit}` : text;
}

function side(text: string, system: System): Parsed {
  const read = parseDiameter(text, system);
  if (read.ok && read.value > 2) return { ok: false, message: says.tooWide };
  return read;
}

function sameSection(a: Section, b: Section): boolean {
  const near = (x: number, y: number) => Math.abs(x - y) < 1e-6;
  if (a.shape === 'round') return b.shape === 'round' && near(a.diameter, b.diameter);
  return b.shape === a.shape && near(a.width, b.width) && near(a.height, b.height);
}
