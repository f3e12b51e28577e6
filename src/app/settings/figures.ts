import {
  currentStyle,
  inchStyles,
  isLocale,
  metricLengths,
  onStyle,
  plainChoice,
  type StyleChoice,
  setStyle,
  styleOf,
} from '../../units/index.ts';
import type { AppStore } from '../store.ts';
import type { Ui } from '../ui.ts';

/** How this reader wants figures; `locale` is null where the browser's own is followed. */
export type Figures = StyleChoice;

const key = 'gentlebend.figures';
const first: Figures = plainChoice;

/** What was chosen in this browser before; what is missing or no longer known is as at first. */
export function keptFigures(): Figures {
  try {
    return figuresFrom(JSON.parse(localStorage.getItem(key) ?? 'null'));
  } catch {
    return first;
  }
}

function figuresFrom(kept: unknown): Figures {
  if (typeof kept !== 'object' || kept === null) return first;
  const { locale, inches, metric } = kept as Partial<Record<keyof Figures, unknown>>;
  return {
    locale: typeof locale === 'string' && isLocale(locale) ? locale : null,
    inches: inchStyles.find((one) => one === inches) ?? first.inches,
    metric: metricLengths.find((one) => one === metric) ?? first.metric,
  };
}

/** Changes how figures are written, and remembers it. */
export function chooseFigures(ui: Ui, change: Partial<Figures>): void {
  const figures = { ...ui.getState().figures, ...change };
  ui.setState({ figures });
  try {
    localStorage.setItem(key, JSON.stringify(figures));
  } catch {
    // A browser that keeps nothing still writes figures as they were chosen.
  }
}

/** Writes figures as they are chosen, from now on. */
export function writeAsChosen(ui: Ui): void {
  const take = ({ figures }: { readonly figures: Figures }) =>
    setStyle(styleOf({ ...figures, locale: figures.locale ?? browserLocale() }));
  take(ui.getState());
  ui.subscribe((now, before) => {
    if (now.figures !== before.figures) take(now);
  });
}

/** What is on the board is worded anew when figures are written otherwise. */
export function followFigures(board: AppStore): void {
  onStyle(board.reword);
}

/** The locale of the browser, or none where it names one that has no numbers. */
export function browserLocale(): string | null {
  return isLocale(navigator.language) ? navigator.language : null;
}

/** The style in use as plain data, for a worker. */
export function figuresInUse(): StyleChoice {
  const { locale, inches, metric } = currentStyle();
  return { locale, inches, metric };
}
