import type { SheetId } from '../../graph/sheet.ts';
import { words } from '../../words/index.ts';

const says = words.sheets.names;

export const sheetNames: Readonly<Record<SheetId, string>> = {
  floor: says.floor,
  'section-x': says.sectionX,
  'section-y': says.sectionY,
};
