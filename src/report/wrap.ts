/**
 * Breaks a line at spaces so that no part is wider than `width` characters; a longer word stays
 * whole. A width of null never breaks: output that is piped stays one sentence a line.
 */
export function wrap(text: string, width: number | null): string[] {
  if (width === null || text.length <= width) return [text];
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    if (line === '') line = word;
    else if (line.length + 1 + word.length <= width) line += ` ${word}`;
    else {
      lines.push(line);
      line = word;
    }
  }
  lines.push(line);
  return lines;
}
