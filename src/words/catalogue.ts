import { words } from './index.ts';

/** What a row of the catalogue says to people. Where it is from is cited as it was printed. */
export type RowTexts = Readonly<
  Partial<
    Record<
      'name' | 'what' | 'reference' | 'range' | 'caution' | 'remedy' | 'printed' | 'edition' | 'look' | 'fix',
      string
    >
  > & { notes?: readonly string[] }
>;

/** The lists of the catalogue in `shared/`, by the names of their files. */
export type CatalogueList =
  | 'bends'
  | 'caps'
  | 'ducts'
  | 'entries'
  | 'faults'
  | 'inline'
  | 'junctions'
  | 'limits'
  | 'materials'
  | 'rules'
  | 'transitions';

/** Texts of the catalogue in another language than English, by list and by the id of the row. */
export type CatalogueTexts = Readonly<Partial<Record<CatalogueList, Readonly<Record<string, RowTexts>>>>>;

/** The rows of a list with their texts in the language in use; what is not translated stays English. */
export function inWords<Row extends { readonly id: string }>(
  list: CatalogueList,
  rows: readonly Row[],
  texts: CatalogueTexts = words.catalogue.texts,
): readonly Row[] {
  const own = texts[list];
  return own ? rows.map((row) => (Object.hasOwn(own, row.id) ? { ...row, ...own[row.id] } : row)) : rows;
}
