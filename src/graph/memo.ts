import { currentStyle } from '../units/index.ts';

const leaf = Symbol('result');
type Branch = { objects?: WeakMap<object, Branch>; values?: Map<unknown, Branch>; [leaf]?: unknown };

/**
 * Remembers a pure function's result by the identity of its arguments. Objects are held weakly, so a
 * document that is dropped takes its results with it; the first argument must therefore be an object. Results
 * may hold text, so each style of figures has its own.
 */
export function memoise<Args extends readonly [object, ...unknown[]], Result>(
  compute: (...args: Args) => Result,
): (...args: Args) => Result {
  const root: Branch = {};
  return (...args) => {
    let branch = step(root, currentStyle());
    for (const arg of args) branch = step(branch, arg);
    if (!(leaf in branch)) branch[leaf] = compute(...args);
    return branch[leaf] as Result;
  };
}

/**
 * Remembers only the last result of a pure function for each first argument, an object that is held weakly: free
 * while the other arguments are the same. For the parts of a drawing, of which an edit leaves nearly all as they were.
 */
export function keepLatest<Args extends readonly [object, ...unknown[]], Result>(
  compute: (...args: Args) => Result,
): (...args: Args) => Result {
  const kept = new WeakMap<
    object,
    { readonly args: Args; readonly style: object; readonly result: Result }
  >();
  return (...args) => {
    const style = currentStyle();
    const known = kept.get(args[0]);
    if (known && known.style === style && sameItems(known.args, args)) return known.result;
    const result = compute(...args);
    kept.set(args[0], { args, style, result });
    return result;
  };
}

/** A value that is made when it is first asked for, and then kept. */
export function lazily<Value>(make: () => Value): () => Value {
  let made: { readonly value: Value } | null = null;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

function sameItems(some: readonly unknown[], others: readonly unknown[]): boolean {
  if (some.length !== others.length) return false;
  for (let i = 1; i < some.length; i++) if (some[i] !== others[i]) return false;
  return true;
}

function step(branch: Branch, arg: unknown): Branch {
  const isObject = typeof arg === 'object' && arg !== null;
  if (isObject) branch.objects ??= new WeakMap();
  else branch.values ??= new Map();
  const next = isObject ? branch.objects?.get(arg) : branch.values?.get(arg);
  if (next) return next;
  const made: Branch = {};
  if (isObject) branch.objects?.set(arg, made);
  else branch.values?.set(arg, made);
  return made;
}
