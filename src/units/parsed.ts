/** How numbers are shown and what a bare number means. */
export type System = 'imperial' | 'metric';

/** What a person typed, in SI, or a sentence that says what is wrong and what would be right. */
export type Parsed<T = number> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly message: string };

export function parsed<T>(value: T): Parsed<T> {
  return { ok: true, value };
}

export function refused(message: string): { readonly ok: false; readonly message: string } {
  return { ok: false, message };
}
