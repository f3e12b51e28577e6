import type { Derivation } from '../graph/derive/derivation.ts';
import { derivationText as plainText } from '../graph/derive/text.ts';
import type { System } from '../units/index.ts';

/** A derivation as text, set in below the name of its speed. */
export function derivationText(derivation: Derivation, units: System): string {
  return plainText(derivation, units).trimEnd().replace(/^/gm, '    ');
}
