/** Whether every word begins a word of the text, in any case. */
export function holdsAll(text: string, words: readonly string[]): boolean {
  const lower = text.toLowerCase();
  return words.every((word) => begins(lower, word));
}

function begins(lower: string, word: string): boolean {
  // `1/3` is no beginning of 1/32, as `cho` is one of choke.
  const isNumber = /^[\d/.,-]+$/.test(word);
  for (let at = lower.indexOf(word); at !== -1; at = lower.indexOf(word, at + 1)) {
    const before = lower[at - 1] ?? ' ';
    // A word that itself begins with a mark (`(`, `#`) stands anywhere.
    const isStart = !/[\p{L}\p{N}]/u.test(before) || !/^[\p{L}\p{N}]/u.test(word);
    if (isStart && !(isNumber && /[\p{L}\p{N}/.,]/u.test(lower[at + word.length] ?? ' ')))
      return true;
  }
  return false;
}

/** How much of running text is shown on either side of what was found, in characters. */
const SIDE = 45;

/** What stands around a stretch of a text, whole words, in one line. */
export function around(text: string, start: number, end: number): string {
  const from = start <= SIDE ? 0 : text.indexOf(' ', start - SIDE) + 1 || start;
  const to = end + SIDE >= text.length ? text.length : text.lastIndexOf(' ', end + SIDE);
  const part = text.slice(Math.min(from, start), Math.max(to, end)).replace(/\s+/g, ' ').trim();
  return `${from > 0 ? '… ' : ''}${part}${to < text.length ? ' …' : ''}`;
}
