/** The forms of a word that its count may call for; every language has `other`. */
export type Forms = Readonly<Partial<Record<Intl.LDMLPluralRule, string>> & { other: string }>;

/**
 * The form of a word that goes with a count, by the rules of one language (Unicode CLDR through
 * `Intl.PluralRules`): each language's texts make their own.
 */
export function pluralsOf(language: string): (count: number, forms: Forms) => string {
  const rules = new Intl.PluralRules(language);
  return (count, forms) => forms[rules.select(count)] ?? forms.other;
}
