/** How far a typed search is from a text; `null` where a typed word has nothing to do with it. Less is nearer. */
export function searchDistance(typed: string, title: string, also = ''): number | null {
  const words = plain(typed);
  const ofTitle = plain(title);
  const ofAlso = plain(also);
  let total = 0;
  for (const [i, word] of words.entries()) {
    const near = Math.min(nearest(word, ofTitle), 3 + nearest(word, ofAlso));
    if (!Number.isFinite(near)) return null;
    total += near + (ofTitle[i]?.startsWith(word) ? 0 : 0.1);
  }
  return words.length === 0 ? 0 : total / words.length;
}

function plain(text: string): string[] {
  return text
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '');
}

/** 0 the word or its beginning, 1 within it, 2 all but one letter of its beginning. */
function nearest(typed: string, words: readonly string[]): number {
  let best = Number.POSITIVE_INFINITY;
  for (const word of words) {
    if (word.startsWith(typed)) return 0;
    if (typed.length > 1 && word.includes(typed)) best = Math.min(best, 1);
    else if (typed.length > 3 && oneLetterOff(typed, word)) best = Math.min(best, 2);
  }
  return best;
}

/** True where a word begins as typed but for one letter: another one, one too many, one left out, or two exchanged. */
function oneLetterOff(typed: string, word: string): boolean {
  let at = 0;
  while (at < typed.length && typed[at] === word[at]) at += 1;
  const [rest, after] = [typed.slice(at + 1), word.slice(at + 1)];
  const exchanged = typed[at] === word[at + 1] && typed[at + 1] === word[at];
  return (
    after.startsWith(rest) ||
    word.slice(at).startsWith(rest) ||
    after.startsWith(typed.slice(at)) ||
    (exchanged && word.slice(at + 2).startsWith(typed.slice(at + 2)))
  );
}
