import type { CatalogueTexts } from '../catalogue.ts';

/**
 * The catalogue in `shared/` is written in English, so that there is nothing here. A translation gives its
 * texts by list and by id: `{ bends: { smooth: { name: '…', what: '…' } } }`.
 */
export const texts: CatalogueTexts = {};
