/** Whether a text has a word or a run of words whole, in any case; a hyphen belongs to a word. */
export function hasWord(text: string, word: string): boolean {
  const plain = text.toLowerCase().replace(/[^\p{L}\p{N}-]+/gu, ' ');
  return ` ${plain} `.includes(` ${word.toLowerCase()} `);
}
