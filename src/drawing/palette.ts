/** Colours of one theme; the same values as the custom properties of `src/app/tokens.css`. */
export interface Palette {
  readonly sheet: string;
  readonly ink: string;
  readonly muted: string;
  readonly hairline: string;
  readonly accent: string;
  readonly onAccent: string;
  readonly danger: string;
  readonly ok: string;
  /** Grid lines: faint and stronger. */
  readonly gridMinor: string;
  readonly gridMajor: string;
  /** Rulers along the edges of a sheet. */
  readonly ruler: string;
  /** Walls of duct. */
  readonly wall: string;
  /** Fill of duct that has no number yet. */
  readonly unsolved: string;
  /** Hatch and fill of blocks and exits. */
  readonly hatch: string;
  readonly block: string;
  readonly exit: string;
}

export type Theme = 'light' | 'dark' | 'print';

export const palettes: Readonly<Record<Theme, Palette>> = {
  light: {
    sheet: '#fbf8f1',
    ink: '#24211b',
    muted: '#655f52',
    hairline: '#d8d0c0',
    accent: '#a3431b',
    onAccent: '#fffaf2',
    danger: '#9b1c31',
    ok: '#2f6b4f',
    gridMinor: '#f2ede1',
    gridMajor: '#e6dfcf',
    ruler: '#f4f0e6',
    wall: '#24211b',
    unsolved: '#e4ddce',
    hatch: 'rgb(101 95 82 / 34%)',
    block: 'rgb(101 95 82 / 7%)',
    exit: 'rgb(47 107 79 / 10%)',
  },
  dark: {
    sheet: '#1c1f24',
    ink: '#ece6da',
    muted: '#a39c8e',
    hairline: '#343940',
    accent: '#ee9163',
    onAccent: '#23140b',
    danger: '#ff8a93',
    ok: '#7cc7a0',
    gridMinor: '#21252a',
    gridMajor: '#2a2f36',
    ruler: '#191c20',
    wall: '#f2ecdf',
    unsolved: '#3a3f47',
    hatch: 'rgb(163 156 142 / 32%)',
    block: 'rgb(163 156 142 / 8%)',
    exit: 'rgb(124 199 160 / 12%)',
  },
  print: {
    sheet: '#ffffff',
    ink: '#000000',
    muted: '#444444',
    hairline: '#bbbbbb',
    accent: '#7c3214',
    onAccent: '#ffffff',
    danger: '#8a1024',
    ok: '#1f5a3e',
    gridMinor: '#f4f4f4',
    gridMajor: '#e6e6e6',
    ruler: '#ffffff',
    wall: '#000000',
    unsolved: '#e8e8e8',
    hatch: 'rgb(68 68 68 / 36%)',
    block: 'rgb(68 68 68 / 6%)',
    exit: 'rgb(31 90 62 / 8%)',
  },
};

export const FONT = '"Inter Variable", system-ui, sans-serif';

/** Smallest text on a sheet, CSS px. */
export const MIN_TEXT = 11;
