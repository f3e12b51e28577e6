/** A pure function of one number that keeps its last few results, for callers that ask for the same again and again. */
export function keepingLast<Result>(most: number, compute: (of: number) => Result): (of: number) => Result {
  const kept: { readonly of: number; readonly result: Result }[] = [];
  return (of) => {
    for (const one of kept) if (one.of === of) return one.result;
    const result = compute(of);
    kept.unshift({ of, result });
    kept.length = Math.min(kept.length, most);
    return result;
  };
}
