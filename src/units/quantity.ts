import { words } from '../words/index.ts';
import {
  BTU_PER_HOUR,
  CFM,
  FOOT,
  FPM,
  INCH,
  INCH_OF_WATER,
  INCH_OF_WATER_PER_100_FT,
  MILLIMETRE_OF_WATER,
} from './constants.ts';
import { type Parsed, parsed, refused, type System } from './parsed.ts';
import { currentStyle, type Style } from './style.ts';
import { localised, plain, quoted, readNumber, readSign, unclearWords } from './text.ts';

/** A figure ready for a table: what it says, and the number and unit that it says. */
export interface Quantity {
  /** With the unit: `243 cfm`. */
  readonly text: string;
  /** Without the unit: `243`. */
  readonly figure: string;
  /** The number in `unit`, not rounded. */
  readonly value: number;
  readonly unit: string;
}

export type QuantityKind =
  | 'flow'
  | 'pressure'
  | 'velocity'
  | 'lossRate'
  | 'temperature'
  | 'angle'
  | 'area'
  | 'floorArea'
  | 'run'
  | 'elevation'
  | 'volume'
  | 'heat'
  | 'density';

interface Display {
  readonly unit: string;
  /** No space between the figure and the unit. */
  readonly tight?: boolean;
  /** SI for one of the unit. */
  readonly factor: number;
  /** What the unit reads where SI is 0; 0 for all but temperature. */
  readonly offset?: number;
  /** Decimals for a value in the unit; below 0, whole tens. */
  readonly decimals: (value: number) => number;
  /** Decimals that say nothing are left out. */
  readonly trim?: boolean;
}

interface Unit {
  readonly factor: number;
  readonly offset?: number;
}

interface Kind {
  readonly signed: boolean;
  /** Values run to thousands in these systems' units, so that the locale's sign before three figures groups them. */
  readonly thousands?: readonly System[];
  readonly sample: Readonly<Record<System, readonly string[]>>;
  readonly show: Readonly<Record<System, Display>>;
  /** Spellings without spaces, dots and carets, in lower case. */
  readonly units: Readonly<Record<string, Unit>>;
}

const always = (decimals: number) => () => decimals;
/** More decimals below a limit; what rounds to the limit is written as the limit is. */
const below = (limit: number, under: number, over: number) => (value: number) =>
  Math.abs(value) < limit - 0.5 * 10 ** -over ? under : over;
const fahrenheit = { factor: 5 / 9, offset: 32 } as const;

function spelled(unit: Unit, ...names: string[]): Record<string, Unit> {
  return Object.fromEntries(names.map((name) => [name, unit]));
}

const degreesShown: Display = { unit: '°', tight: true, factor: 1, decimals: always(1), trim: true };

const kinds: Readonly<Record<QuantityKind, Kind>> = {
  flow: {
    signed: false,
    thousands: ['imperial', 'metric'],
    sample: { imperial: ['300 cfm'], metric: ['510 m³/h', '0.14 m³/s'] },
    show: {
      imperial: { unit: 'cfm', factor: CFM, decimals: always(0) },
      metric: { unit: 'm³/h', factor: 1 / 3600, decimals: always(0) },
    },
    units: {
      ...spelled({ factor: CFM }, 'cfm', 'ft3/min', 'cuft/min', 'scfm', 'cubicfeetperminute'),
      ...spelled({ factor: 1 / 3600 }, 'm3/h', 'm3/hr', 'm3h', 'cmh'),
      ...spelled({ factor: 1 }, 'm3/s', 'cms'),
      ...spelled({ factor: 0.001 }, 'l/s', 'lps'),
    },
  },
  pressure: {
    signed: true,
    sample: { imperial: ['0.25 in w.g.'], metric: ['62 Pa'] },
    show: {
      imperial: {
        unit: 'in w.g.',
        factor: INCH_OF_WATER,
        decimals: below(0.1, 3, 2),
      },
      metric: { unit: 'Pa', factor: 1, decimals: below(10, 1, 0) },
    },
    units: {
      ...spelled({ factor: INCH_OF_WATER }, 'inwg', 'inwc', 'inh2o', 'iwg', 'iwc', 'inchwg', 'incheswg'),
      ...spelled(
        { factor: INCH_OF_WATER },
        'inchwc',
        'incheswc',
        'inchesofwater',
        '"wg',
        '"wc',
        '"h2o',
        '"',
        'in',
      ),
      ...spelled({ factor: MILLIMETRE_OF_WATER }, 'mmh2o', 'mmwg', 'mmwc'),
      ...spelled({ factor: 1 }, 'pa', 'pascal', 'pascals'),
      ...spelled({ factor: 1000 }, 'kpa'),
      ...spelled({ factor: 100 }, 'hpa', 'mbar'),
    },
  },
  velocity: {
    signed: false,
    thousands: ['imperial'],
    sample: { imperial: ['1200 fpm'], metric: ['6.1 m/s'] },
    show: {
      imperial: { unit: 'fpm', factor: FPM, decimals: always(-1) },
      metric: { unit: 'm/s', factor: 1, decimals: always(1) },
    },
    units: {
      ...spelled({ factor: FPM }, 'fpm', 'ft/min', 'feetperminute'),
      ...spelled({ factor: 1 }, 'm/s', 'mps'),
    },
  },
  lossRate: {
    signed: false,
    sample: { imperial: ['0.1 in w.g./100 ft'], metric: ['0.8 Pa/m'] },
    show: {
      imperial: {
        unit: 'in w.g./100 ft',
        factor: INCH_OF_WATER_PER_100_FT,
        decimals: below(0.1, 3, 2),
      },
      metric: { unit: 'Pa/m', factor: 1, decimals: below(10, 2, 1) },
    },
    units: {
      ...spelled(
        { factor: INCH_OF_WATER_PER_100_FT },
        'inwg/100ft',
        'inwc/100ft',
        'inh2o/100ft',
        '"wg/100ft',
      ),
      ...spelled({ factor: 1 }, 'pa/m'),
    },
  },
  temperature: {
    signed: true,
    sample: { imperial: ['70 °F'], metric: ['21 °C'] },
    show: {
      imperial: { unit: '°F', ...fahrenheit, decimals: always(0) },
      metric: { unit: '°C', factor: 1, decimals: always(1), trim: true },
    },
    units: {
      ...spelled(fahrenheit, 'f', '°f', 'degf', 'fahrenheit'),
      ...spelled({ factor: 1 }, 'c', '°c', 'degc', 'celsius'),
      ...spelled({ factor: 1, offset: 273.15 }, 'k', 'kelvin'),
    },
  },
  angle: {
    signed: true,
    sample: { imperial: ['45°'], metric: ['45°'] },
    show: { imperial: degreesShown, metric: degreesShown },
    units: {
      ...spelled({ factor: 1 }, '°', 'deg', 'degs', 'degree', 'degrees'),
      ...spelled({ factor: 180 / Math.PI }, 'rad', 'radians'),
    },
  },
  area: {
    signed: false,
    sample: { imperial: ['50 sq in'], metric: ['320 cm²'] },
    show: {
      imperial: { unit: 'sq in', factor: INCH ** 2, decimals: always(1) },
      metric: { unit: 'cm²', factor: 1e-4, decimals: always(0) },
    },
    units: {
      ...spelled({ factor: INCH ** 2 }, 'in2', 'sqin', 'squareinches', '"2'),
      ...spelled({ factor: FOOT ** 2 }, 'ft2', 'sqft', 'squarefeet'),
      ...spelled({ factor: 1e-6 }, 'mm2'),
      ...spelled({ factor: 1e-4 }, 'cm2', 'sqcm'),
      ...spelled({ factor: 1 }, 'm2', 'sqm'),
    },
  },
  floorArea: {
    signed: false,
    thousands: ['imperial', 'metric'],
    sample: { imperial: ['1800 sq ft'], metric: ['165 m²'] },
    show: {
      imperial: { unit: 'sq ft', factor: FOOT ** 2, decimals: always(0) },
      metric: { unit: 'm²', factor: 1, decimals: always(0) },
    },
    units: {
      ...spelled({ factor: FOOT ** 2 }, 'ft2', 'sqft', 'squarefeet'),
      ...spelled({ factor: 1 }, 'm2', 'sqm', 'squaremetres', 'squaremeters'),
    },
  },
  run: {
    signed: false,
    sample: { imperial: ['18.5 ft'], metric: ['5.6 m'] },
    show: {
      imperial: { unit: 'ft', factor: FOOT, decimals: always(1) },
      metric: { unit: 'm', factor: 1, decimals: always(2) },
    },
    units: {
      ...spelled({ factor: FOOT }, 'ft', "'", 'feet', 'foot'),
      ...spelled({ factor: 1 }, 'm', 'metres', 'meters'),
    },
  },
  elevation: {
    signed: true,
    thousands: ['imperial'],
    sample: { imperial: ['1200 ft'], metric: ['365 m'] },
    show: {
      imperial: { unit: 'ft', factor: FOOT, decimals: always(0) },
      metric: { unit: 'm', factor: 1, decimals: always(0) },
    },
    units: {
      ...spelled({ factor: FOOT }, 'ft', "'", 'feet', 'foot'),
      ...spelled({ factor: 1 }, 'm', 'metres', 'meters'),
    },
  },
  volume: {
    signed: false,
    thousands: ['imperial', 'metric'],
    sample: { imperial: ['14000 cu ft'], metric: ['400 m³'] },
    show: {
      imperial: { unit: 'cu ft', factor: FOOT ** 3, decimals: always(0) },
      metric: { unit: 'm³', factor: 1, decimals: always(0) },
    },
    units: {
      ...spelled({ factor: FOOT ** 3 }, 'ft3', 'cuft', 'cubicfeet'),
      ...spelled({ factor: 1 }, 'm3', 'cum', 'cubicmetres', 'cubicmeters'),
    },
  },
  heat: {
    signed: false,
    thousands: ['imperial'],
    sample: { imperial: ['60000 Btu/h'], metric: ['17.6 kW'] },
    show: {
      imperial: { unit: 'Btu/h', factor: BTU_PER_HOUR, decimals: always(-2) },
      metric: { unit: 'kW', factor: 1000, decimals: always(1) },
    },
    units: {
      ...spelled({ factor: BTU_PER_HOUR }, 'btu/h', 'btu/hr', 'btuh', 'btu'),
      ...spelled({ factor: 1 }, 'w'),
      ...spelled({ factor: 1000 }, 'kw'),
    },
  },
  density: {
    signed: false,
    sample: { imperial: ['0.075 lb/ft³'], metric: ['1.2 kg/m³'] },
    show: {
      imperial: { unit: 'lb/ft³', factor: 0.45359237 / FOOT ** 3, decimals: always(4) },
      metric: { unit: 'kg/m³', factor: 1, decimals: always(3) },
    },
    units: {
      ...spelled({ factor: 0.45359237 / FOOT ** 3 }, 'lb/ft3', 'lb/cuft', 'lbm/ft3'),
      ...spelled({ factor: 1 }, 'kg/m3'),
    },
  },
};

/** The unit that a kind is shown in: `cfm`, `m³/h`. */
export function unitOf(kind: QuantityKind, system: System): string {
  return kinds[kind].show[system].unit;
}

/** An SI value as it is shown, rounded as the trade rounds it; a dash where it is not a finite number. */
export function quantity(
  kind: QuantityKind,
  si: number,
  system: System,
  style: Style = currentStyle(),
): Quantity {
  const { unit, tight, factor, offset = 0, decimals, trim } = kinds[kind].show[system];
  const value = si / factor + offset;
  if (!Number.isFinite(value)) return { text: '–', figure: '–', value, unit };
  const places = decimals(value);
  const scale = 10 ** places;
  const rounded = Math.round(value * scale) / scale;
  const shown = Math.max(0, places);
  const figure = style.figure(rounded, shown, {
    least: trim ? 0 : shown,
    grouped: kinds[kind].thousands?.includes(system) === true,
  });
  return { text: `${figure}${tight ? '' : ' '}${unit}`, figure, value, unit };
}

const sampleOf = ([one = '', other]: readonly string[]): string =>
  other === undefined ? one : words.units.either(one, other);

export interface ParseQuantityOptions {
  /** Lets the value be below 0 where the kind would refuse it. */
  readonly negative?: boolean;
  readonly style?: Style;
}

/**
 * An SI value from what people type, with a unit or in the unit that `system` shows. Refuses a unit
 * of another kind, an unclear comma or point, and a value below 0 where it makes no sense.
 */
export function parseQuantity(
  kind: QuantityKind,
  text: string,
  system: System,
  options: ParseQuantityOptions = {},
): Parsed {
  const { signed, thousands, sample, show, units } = kinds[kind];
  const { name, bare, first } = words.units.kinds[kind];
  const say = words.units.quantity;
  const style = options.style ?? currentStyle();
  const sentence = localised(sampleOf(sample[system]), style).replace(/\.?$/, '.');
  const [sign, unsigned] = readSign(plain(text));
  if (unsigned === '') return refused(say.missing(name, sentence));
  const number = readNumber(unsigned, style, Object.hasOwn(units, "'"));
  if (!number) return refused(say.unread(quoted(text), name, sentence));
  const spelling = number.rest.replace(/[\s.^]/g, '');
  const unit = spelling === '' || Object.hasOwn(units, spelling) ? units[spelling] : undefined;
  if (spelling !== '' && !unit) return refused(say.otherUnit(quoted(text), bare, sentence));
  const { factor, offset = 0 } = unit ?? show[system];
  const groups = thousands?.some((each) => show[each].factor === factor) && number.unclear === style.group;
  if (number.unclear && !groups) return refused(unclearWords(text, number, style));
  const magnitude = number.unclear ? Math.round(number.value * 1000) : number.value;
  const si = (sign * magnitude - offset) * factor;
  if (!Number.isFinite(si)) return refused(say.tooLarge(quoted(text), name));
  if (sign < 0 && magnitude > 0 && !signed && !options.negative)
    return refused(say.negative(first, sentence));
  return parsed(si === 0 ? 0 : si);
}
