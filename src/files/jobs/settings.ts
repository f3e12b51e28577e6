const prefix = 'gentlebend.';

/** What lies in local storage beside the settings: locks and last moments of jobs. */
const others = ['gentlebend.last.', 'gentlebend.lock.', 'gentlebend.work.'];

/** The choices that a person has made in this browser: theme, language, views. */
export function readSettings(storage: () => Storage): Record<string, string> {
  try {
    const kept = storage();
    const keys = Array.from({ length: kept.length }, (_, i) => kept.key(i) ?? '');
    const own = keys.filter(
      (key) => key.startsWith(prefix) && !others.some((other) => key.startsWith(other)),
    );
    return Object.fromEntries(own.sort().map((key) => [key, kept.getItem(key) ?? '']));
  } catch {
    return {};
  }
}

/** Takes settings over; keys of other programs and of jobs are left out. */
export function writeSettings(storage: () => Storage, settings: Readonly<Record<string, string>>): void {
  try {
    for (const [key, value] of Object.entries(settings))
      if (key.startsWith(prefix) && !others.some((other) => key.startsWith(other)))
        storage().setItem(key, value);
  } catch {
    // Settings that are not kept cost nothing but a choice made again.
  }
}
