/** How much this browser holds for the program and how much it lets it hold, bytes. */
export interface Estimate {
  readonly usage: number;
  readonly quota: number;
  /** Kept until a person deletes it; otherwise the browser may clear it when it runs short. */
  readonly lasting: boolean;
}

/** The browser's room for what is kept. */
export interface StorageRoom {
  /** Null where the browser does not say. */
  estimate(): Promise<Estimate | null>;
  /** Asks the browser to keep it all until a person deletes it; false where it does not agree. */
  askToStay(): Promise<boolean>;
}

/** Above this share the next large job may not find room. */
export const nearlyFull = 0.9;

/** What the browser tells through its storage manager. */
export function browserRoom(): StorageRoom {
  const manager = navigator.storage as StorageManager | undefined;
  return {
    async estimate() {
      try {
        const { usage, quota } = (await manager?.estimate()) ?? {};
        if (usage === undefined || quota === undefined || quota <= 0) return null;
        return { usage, quota, lasting: (await manager?.persisted?.()) ?? false };
      } catch {
        return null;
      }
    },
    askToStay: async () => (await manager?.persist?.().catch(() => false)) ?? false,
  };
}
