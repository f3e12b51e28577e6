/** Units of a chart's drawing. */
export interface ChartSize {
  readonly width: number;
  readonly height: number;
}

/** As wide as the side panel has room for, and never shown narrower. */
export const narrowWidth = 272;
