/** Several things in one sentence. */
export const list = {
  /** "a", "a and b", "a, b and c". */
  and: (items: readonly string[]) => items.join(', ').replace(/, ([^,]*)$/, ' and $1'),
};
