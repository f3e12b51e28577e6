/** What the making of a file is given: word that it is called off, and whom to tell how far it is. */
export interface Progress {
  readonly signal: AbortSignal;
  /** Told the share that is done, 0-1. */
  readonly onShare: (share: number) => void;
}
