/** A text as small words with single blanks between, for finding words in it: `Cam, 2nd step` is `cam 2nd step`. */
export function plainWords(text: string): string {
  return text
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
}
