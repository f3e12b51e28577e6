import type { UnitSystem } from '../../graph/document.ts';
import { parseLength } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import type { Typed } from './draw/typing.ts';
import { actionOf } from './keys.ts';
import type { KeyInput } from './tool.ts';

const says = words.tools.box;

/** Several numbers that a tool can be typed into, one at a time. */
export interface TypedFields {
  readonly texts: readonly string[];
  readonly active: number;
}

export function blankFields(count: number): TypedFields {
  return { texts: Array.from({ length: count }, () => ''), active: 0 };
}

/** A key that a length can begin with. */
export const opening = /^[0-9.,¼-¾⅛⅜⅝⅞]$/;
/** A key that can stand further on in a length, a ratio or a count. */
export const following = /^[0-9.,'"′″’”¼-¾⅛⅜⅝⅞/ a-z-]$/i;

/** The fields after any key: Tab and its way back, Backspace, or a printable key; `null` where it means nothing here. */
export function typedKey(fields: TypedFields, input: KeyInput): TypedFields | null {
  switch (actionOf(input, 'type')) {
    case 'type.next':
      return stepField(fields, 1);
    case 'type.back':
      return stepField(fields, -1);
    case 'type.erase':
      return eraseFrom(fields);
    default:
      return input.modifiers.mod ? null : typeInto(fields, input.key);
  }
}

/** The fields after a printable key, or `null` where the key starts or continues no number. */
function typeInto(fields: TypedFields, key: string): TypedFields | null {
  const text = fields.texts[fields.active] ?? '';
  return (text === '' ? opening : following).test(key) ? withText(fields, text + key) : null;
}

/** The fields after Backspace, or `null` where there is nothing to erase. */
function eraseFrom(fields: TypedFields): TypedFields | null {
  const text = fields.texts[fields.active] ?? '';
  if (text !== '') return withText(fields, text.slice(0, -1));
  return fields.active > 0 ? { ...fields, active: fields.active - 1 } : null;
}

/** The next field, or the one before; round from the last to the first. */
function stepField(fields: TypedFields, by: 1 | -1): TypedFields {
  const count = fields.texts.length;
  return { ...fields, active: (fields.active + by + count) % count };
}

export function isBlank({ texts }: TypedFields): boolean {
  return texts.every((text) => text === '');
}

/** A typed size, m, more than 0. */
export function sizeIn({ texts }: TypedFields, place: number, units: UnitSystem): Typed {
  const text = texts[place] ?? '';
  if (text.trim() === '') return { kind: 'none' };
  const parsed = parseLength(text, units);
  if (!parsed.ok) return { kind: 'bad', message: parsed.message };
  if (!(parsed.value > 0)) return { kind: 'bad', message: says.tooSmall };
  if (parsed.value > 1000) return { kind: 'bad', message: says.tooLarge };
  return { kind: 'value', value: parsed.value };
}

/** A field as it is shown: what is typed, a caret where it is being typed, else what it would be. */
export function shownField({ texts, active }: TypedFields, place: number, otherwise: string): string {
  const text = texts[place] ?? '';
  if (text !== '') return place === active ? `${text}|` : text;
  return place === active ? `[${otherwise}]` : otherwise;
}

function withText(fields: TypedFields, text: string): TypedFields {
  return { ...fields, texts: fields.texts.map((each, i) => (i === fields.active ? text : each)) };
}
