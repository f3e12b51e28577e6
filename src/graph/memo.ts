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
