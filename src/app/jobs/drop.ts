/** What a file is taken for, by its name and the type that the browser gives it. */
export type FileKind = 'job' | 'archive' | 'picture' | 'unknown';

interface Named {
  readonly name: string;
  readonly type: string;
}

const pictureEnding = /\.(png|jpe?g|gif|webp|svg|pdf|dxf|bmp)$/i;

export function kindOf({ name, type }: Named): FileKind {
  if (/\.json$/i.test(name) || type === 'application/json') return 'job';
  if (/\.zip$/i.test(name) || /^application\/(x-)?zip/.test(type)) return 'archive';
  if (pictureEnding.test(name) || /^image\//.test(type) || type === 'application/pdf') return 'picture';
  return 'unknown';
}

/** What becomes of files that are dropped. Nothing is done with a part of them where another part is not understood. */
export type DropPlan<F> =
  | { readonly do: 'open'; readonly files: readonly F[] }
  | { readonly do: 'import'; readonly file: F }
  | { readonly do: 'lay'; readonly file: F }
  | { readonly do: 'refuse'; readonly file: F; readonly why: 'beside' | 'several' | 'unknown' };

/** Null where nothing was dropped. `onSheet` is true over a sheet, where a picture can lie. */
export function planOf<F extends Named>(files: readonly F[], onSheet: boolean): DropPlan<F> | null {
  const [first] = files;
  if (!first) return null;
  const unknown = files.find((file) => kindOf(file) === 'unknown');
  if (unknown) return { do: 'refuse', file: unknown, why: 'unknown' };
  if (files.every((file) => kindOf(file) === 'job')) return { do: 'open', files };
  if (files.length > 1) return { do: 'refuse', file: first, why: 'several' };
  if (kindOf(first) === 'archive') return { do: 'import', file: first };
  return onSheet ? { do: 'lay', file: first } : { do: 'refuse', file: first, why: 'beside' };
}

/** What the window says while files are held over it; a browser tells their types then, not their names. */
export type DropHint = 'job' | 'jobs' | 'archive' | 'lay' | 'to a sheet' | 'any';

export function hintOf(types: readonly string[], onSheet: boolean): DropHint {
  const kinds = types.map((type) => kindOf({ name: '', type }));
  if (kinds.length > 0 && kinds.every((kind) => kind === 'job')) return kinds.length === 1 ? 'job' : 'jobs';
  if (kinds.length === 1 && kinds[0] === 'archive') return 'archive';
  if (kinds.length === 1 && kinds[0] === 'picture') return onSheet ? 'lay' : 'to a sheet';
  return 'any';
}
