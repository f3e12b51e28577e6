/** The smallest fraction of an inch that is written is 1/n. */
export type Fraction = 1 | 2 | 4 | 8 | 16 | 32 | 64;

/** How inches are written: to the nearest 1/n, or with decimals. */
export type InchStyle = Fraction | 'decimal inches' | 'decimal feet';

/** The unit that metric lengths are written in, and that a bare number is read in. */
export type MetricLength = 'mm' | 'cm' | 'm';

export const inchStyles: readonly InchStyle[] = [2, 4, 8, 16, 32, 64, 'decimal inches', 'decimal feet'];
export const metricLengths: readonly MetricLength[] = ['mm', 'cm', 'm'];

/** What a reader chooses about figures; plain data that may be kept and sent to a worker. */
export interface StyleChoice {
  /** BCP 47 tag whose decimal sign, grouping and dates are used; `null` for a point and nothing between thousands. */
  readonly locale: string | null;
  readonly inches: InchStyle;
  readonly metric: MetricLength;
}

interface Shape {
  /** Decimals that stay where they are zeros; all if not given. */
  readonly least?: number;
  /** Thousands are set apart, from five figures on. */
  readonly grouped?: boolean;
}

/** A choice made ready: the signs of its locale and a writer of figures. */
export interface Style extends StyleChoice {
  readonly decimal: '.' | ',';
  /** What stands between thousands, as it is typed: a comma, a point, a space, an apostrophe. */
  readonly group: string;
  /** Figures before the last three are grouped in twos. */
  readonly inTwos: boolean;
  /** A number below zero has the minus sign of print, which every field reads too. */
  figure(value: number, decimals: number, shape?: Shape): string;
}

/** Eighths of an inch, whole mm, a decimal point and no grouping: what files, tests and scripts read. */
export const plainChoice: StyleChoice = { locale: null, inches: 8, metric: 'mm' };

const made = new Map<string, Style>();

/** The style of a choice; the same object for the same choice. A locale that the system does not know counts as `null`. */
export function styleOf(choice: StyleChoice): Style {
  const key = `${choice.locale} ${choice.inches} ${choice.metric}`;
  const known = made.get(key);
  if (known) return known;
  const style = makeStyle(choice);
  made.set(key, style);
  return style;
}

export const plainStyle: Style = styleOf(plainChoice);

let current: Style = plainStyle;
const listeners = new Set<() => void>();

/** The style in which text is written where none is named. */
export function currentStyle(): Style {
  return current;
}

/** Takes a style into use for everything that is written from now on, and tells who listens. */
export function setStyle(style: Style): void {
  if (style === current) return;
  current = style;
  for (const listener of [...listeners]) listener();
}

/** Calls back after each change of style; the answer stops that. */
export function onStyle(listener: () => void): () => void {
  listeners.add(listener);
  return () => {
    listeners.delete(listener);
  };
}

/** What `run` gives with another style in use, such as the plain one for a file that a machine reads. Not for promises. */
export function inStyle<T>(style: Style, run: () => T): T {
  const before = current;
  current = style;
  try {
    return run();
  } finally {
    current = before;
  }
}

/** True for a tag that the system can write numbers for. */
export function isLocale(tag: string): boolean {
  try {
    return Intl.NumberFormat.supportedLocalesOf(tag).length > 0;
  } catch {
    return false;
  }
}

/**
 * The locale's tag with Western figures, which are the ones that are read back. `null` gives English, whose
 * decimal sign is a point.
 */
export function tagOf(locale: string | null): string {
  return locale === null ? 'en-US' : new Intl.Locale(locale, { numberingSystem: 'latn' }).toString();
}

function makeStyle(choice: StyleChoice): Style {
  const locale = choice.locale !== null && isLocale(choice.locale) ? choice.locale : null;
  const tag = tagOf(locale);
  const parts = new Intl.NumberFormat(tag, { useGrouping: 'always' as never }).formatToParts(-1234567.5);
  const sign = (type: string) => parts.find((part) => part.type === type)?.value ?? '';
  const lengths = parts.filter(({ type }) => type === 'integer').map(({ value }) => value.length);
  const writers = new Map<string, Intl.NumberFormat>();
  const writer = (decimals: number, least: number, grouped: boolean) => {
    const key = `${decimals}/${least}/${grouped}`;
    const known = writers.get(key);
    if (known) return known;
    const next = new Intl.NumberFormat(tag, {
      minimumFractionDigits: least,
      maximumFractionDigits: decimals,
      // Four figures stay together, so that no `1,200` or `1.200` is written that others read as 1.2.
      useGrouping: grouped && locale !== null ? ('min2' as never) : false,
    });
    writers.set(key, next);
    return next;
  };
  return {
    ...choice,
    locale,
    decimal: sign('decimal') === ',' ? ',' : '.',
    group: sign('group').replace(/\s/, ' ').replace('’', "'"),
    inTwos: lengths.at(-2) === 2,
    figure: (value, decimals, { least = decimals, grouped = false } = {}) => {
      const figures = writer(decimals, least, grouped).format(Math.abs(value));
      return value < 0 && /[1-9]/.test(figures) ? `−${figures}` : figures;
    },
  };
}
