import type { SheetId } from '../../graph/sheet.ts';

export const sheetNames: Readonly<Record<SheetId, string>> = {
  floor: 'Floor',
  'section-x': 'Section x-z, looking north',
  'section-y': 'Section y-z, looking west',
};
