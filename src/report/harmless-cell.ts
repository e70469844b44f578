/**
 * A text as a cell of a spreadsheet that must not run it: `=cmd()` and `@sum` get an apostrophe in
 * front, for sheets come from strangers; `+0.010 in` and `-1/4 turn` are sizes and stay.
 */
export function harmlessCell(text: string): string {
  return /^(?:[=@\t\r]|[+-](?![\d./\s]))/.test(text) ? `'${text}` : text;
}
