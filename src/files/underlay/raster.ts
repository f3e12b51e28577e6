/** A surface to paint on, and to keep what is on it as a file. */
export interface Canvas {
  readonly element: HTMLCanvasElement;
  readonly width: number;
  readonly height: number;
  encode(type: 'image/png' | 'image/jpeg', quality?: number): Promise<Blob>;
}

export interface Decoded {
  readonly width: number;
  readonly height: number;
  /** The picture, smaller or as it is, on a surface; on white where that is wanted. */
  onto(width: number, height: number, white: boolean): Canvas;
  close(): void;
}

/** What reading pictures needs of a browser. */
export interface Raster {
  canvas(width: number, height: number): Canvas;
  /** Rejects a picture that the browser cannot show. */
  decode(blob: Blob): Promise<Decoded>;
}
