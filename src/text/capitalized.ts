/** With a capital for its first letter, as at the head of a line; the rest stays as it is. */
export function capitalized(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
