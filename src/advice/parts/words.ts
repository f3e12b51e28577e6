import { sectionWords } from '../../graph/sections.ts';
import { findBend, findCap, findInline, findMaterial } from '../../hydraulics/catalogue.ts';
import { formatAngle, formatDiameter, formatTrimmed, type System } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import type { Part } from './part.ts';

const { names } = words.partsList;

/** What a part is called across the counter: "8" round galvanized steel duct". */
export function partWords(part: Part, units: System): string {
  const size = part.section ? sectionWords(part.section, units) : '';
  const { row } = part;
  switch (part.kind) {
    case 'duct':
      return names.duct(size, lower(findMaterial(row)?.name ?? row));
    case 'bend': {
      const ratio = part.radiusRatio ? formatTrimmed(part.radiusRatio) : null;
      return names.bend(size, lower(findBend(row)?.name ?? row), formatAngle(part.angle ?? 90), ratio);
    }
    case 'transition': {
      const other = part.to ? sectionWords(part.to, units) : '';
      return row === 'conical' ? names.tapered(size, other) : names.abrupt(size, other);
    }
    case 'junction':
      return names.junction(size);
    case 'cap':
      return names.sized(size, lower(findCap(row)?.name ?? row));
    case 'in-line':
      return names.sized(size, lower(findInline(row)?.name ?? names.ownData));
    case 'coupling':
      return names.sized(size, row === 'slip-and-drive' ? names.slipAndDrive : names.coupling);
    case 'hanger':
      return names.sized(size, names.hanger);
    case 'insulation':
      return names.wrap(formatDiameter(part.thickness ?? 0, units));
    case 'make-up air':
      return row === 'opening' ? names.opening : names.fan;
    default:
      return names[part.kind];
  }
}

function lower(words: string): string {
  return words.charAt(0).toLowerCase() + words.slice(1);
}
