import { currentStyle, type Style, tagOf } from './style.ts';

const written = new Map<string, Intl.DateTimeFormat>();

/**
 * A day as the locale writes it: `25 Nov 2026`, `25.11.2026`; `2026-11-25` where no locale is chosen. In the
 * time zone of the machine. A dash for a date that is none.
 */
export function formatDay(date: Date, style: Style = currentStyle()): string {
  return format(date, style, { dateStyle: 'medium' }, (iso) => iso.slice(0, 10));
}

/** A day with its hour and minute: `25 Nov 2026, 14:05`; `2026-11-25 14:05` where no locale is chosen. */
export function formatMoment(date: Date, style: Style = currentStyle()): string {
  return format(date, style, { dateStyle: 'medium', timeStyle: 'short' }, (iso) =>
    iso.slice(0, 16).replace('T', ' '),
  );
}

function format(
  date: Date,
  { locale }: Style,
  options: Intl.DateTimeFormatOptions,
  plainly: (iso: string) => string,
): string {
  if (Number.isNaN(date.getTime())) return '–';
  if (locale === null) {
    const here = new Date(date.getTime() - date.getTimezoneOffset() * 60_000);
    return plainly(here.toISOString());
  }
  const key = `${locale} ${options.timeStyle ?? ''}`;
  const writer = written.get(key) ?? new Intl.DateTimeFormat(tagOf(locale), options);
  written.set(key, writer);
  return writer.format(date);
}
