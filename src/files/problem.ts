/** What is wrong in a file, and where: `schemes[0].segments[3].to`. An empty path is the whole file. */
export interface Problem {
  readonly path: string;
  /** A clause without a full stop: `no node "n9"`. */
  readonly message: string;
}

/** What was changed so that the file could be loaded. */
export interface Repair {
  readonly path: string;
  readonly message: string;
}

/** A problem or repair as one line: `schemes[0].segments[3].to: no node "n9"`. */
export function lineOf(entry: Problem | Repair): string {
  return entry.path === '' ? entry.message : `${entry.path}: ${entry.message}`;
}

/** A document path as people write it: `schemes[0].segments[3].to`. */
export function pathOf(keys: readonly PropertyKey[]): string {
  let path = '';
  for (const key of keys) {
    if (typeof key === 'number') path += `[${key}]`;
    else if (/^[A-Za-z_]\w*$/.test(String(key))) path += path === '' ? String(key) : `.${String(key)}`;
    else path += `[${JSON.stringify(String(key))}]`;
  }
  return path;
}
