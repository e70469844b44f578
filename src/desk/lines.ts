/** The offset at which the line of an offset starts. */
export function lineStart(text: string, offset: number): number {
  for (let i = offset; i > 0; i--) {
    const sign = text[i - 1];
    if (sign === '\n' || sign === '\r') return i;
  }
  return 0;
}

/** The offset behind the line of an offset, its line end taken in. Of an offset at a line's start, that very line. */
export function lineEnd(text: string, offset: number): number {
  for (let i = offset; i < text.length; i++) {
    if (text[i] === '\n') return i + 1;
    if (text[i] === '\r') return text[i + 1] === '\n' ? i + 2 : i + 1;
  }
  return text.length;
}

/** The offset at which the line of an offset ends, its line end left out. */
export function endOfLine(text: string, offset: number): number {
  for (let i = offset; i < text.length; i++) if (text[i] === '\n' || text[i] === '\r') return i;
  return text.length;
}

/** A text with the line ends that another has, so that what is put into a file looks like the rest of it. */
export function withLineEnds(written: string, text: string): string {
  const end = /\r\n|\n|\r/.exec(text)?.[0] ?? '\n';
  return end === '\n' ? written : written.replace(/\r\n|\n|\r/g, end);
}
