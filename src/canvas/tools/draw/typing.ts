import type { UnitSystem } from '../../../graph/document.ts';
import { parseAngle, parseLength } from '../../../units/index.ts';
import { words } from '../../../words/index.ts';
import { opening } from '../typed-fields.ts';

const says = words.tools.draw;

export type Field = 'length' | 'angle';

/** What has been typed for the leg in hand. */
export interface Typing {
  readonly field: Field;
  readonly length: string;
  readonly angle: string;
  /** 1 up, -1 down, 0 in the plane of the sheet. */
  readonly rise: -1 | 0 | 1;
}

export const untyped: Typing = { field: 'length', length: '', angle: '', rise: 0 };

/** A typed number: nothing typed yet, a value, or a sentence about what is wrong. */
export type Typed =
  | { readonly kind: 'none' }
  | { readonly kind: 'value'; readonly value: number }
  | { readonly kind: 'bad'; readonly message: string };

const openingAngle = /^[0-9.,-]$/;
/** No unit of length has a `u` or a `d`: these stay free for up and down. */
const following = /^[0-9.,'"′″’”¼-¾⅛⅜⅝⅞/ a-ce-tv-z-]$/i;
const followingAngle = /^[0-9., a-z°]$/i;

/** The typing after a printable key, or null where the key starts or continues no number. */
export function typeKey(typing: Typing, key: string): Typing | null {
  const text = typing[typing.field];
  const [first, later] = typing.field === 'angle' ? [openingAngle, followingAngle] : [opening, following];
  const fits = (text === '' ? first : later).test(key);
  return fits ? { ...typing, [typing.field]: text + key } : null;
}

/** The typing after Backspace, or null where there is nothing left to erase. */
export function erase(typing: Typing): Typing | null {
  const text = typing[typing.field];
  if (text !== '') return { ...typing, [typing.field]: text.slice(0, -1) };
  if (typing.rise !== 0) return { ...typing, rise: 0 };
  if (typing.field === 'angle') return { ...typing, field: 'length' };
  return null;
}

/** The other field; a riser has a height alone. */
export function nextField(typing: Typing): Typing {
  if (typing.rise !== 0) return typing;
  return { ...typing, field: typing.field === 'length' ? 'angle' : 'length' };
}

/** The typed length, m, more than 0 and at most a kilometre. */
export function typedLength(typing: Typing, units: UnitSystem): Typed {
  if (typing.length.trim() === '') return { kind: 'none' };
  const parsed = parseLength(typing.length, units);
  if (!parsed.ok) return { kind: 'bad', message: parsed.message };
  if (!(parsed.value > 0)) return { kind: 'bad', message: says.legTooShort };
  if (parsed.value > 1000) return { kind: 'bad', message: says.legTooLong };
  return { kind: 'value', value: parsed.value };
}

/** The typed direction on the sheet, degrees counter-clockwise from the right, in [0, 360). */
export function typedAngle(typing: Typing): Typed {
  if (typing.angle.trim() === '') return { kind: 'none' };
  const parsed = parseAngle(typing.angle, 'metric');
  if (!parsed.ok) return { kind: 'bad', message: parsed.message };
  return { kind: 'value', value: ((parsed.value % 360) + 360) % 360 };
}
