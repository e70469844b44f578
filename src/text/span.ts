/** A stretch of a file: 0-based UTF-16 offsets into its text, `end` exclusive. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

/** A place for people: both numbers 1-based, the column in UTF-16 units. */
export interface Place {
  readonly line: number;
  readonly column: number;
}

/** Turns offsets into lines and columns: the one function in the project that does. */
export class LineIndex {
  readonly #starts: number[] = [0];

  constructor(text: string) {
    // CR LF, LF and a lone CR each end a line, as CommonMark 0.31.2 section 2.1 has it.
    for (let i = 0; i < text.length; i++) {
      const code = text.charCodeAt(i);
      if (code === 10) this.#starts.push(i + 1);
      else if (code === 13 && text.charCodeAt(i + 1) !== 10) this.#starts.push(i + 1);
    }
  }

  /** How many lines the text has, counting a last empty one. */
  get count(): number {
    return this.#starts.length;
  }

  /** The line and column of an offset; an offset past the end belongs to the last line. */
  place(offset: number): Place {
    let low = 0;
    let high = this.#starts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if ((this.#starts[middle] ?? 0) <= offset) low = middle;
      else high = middle - 1;
    }
    return { line: low + 1, column: offset - (this.#starts[low] ?? 0) + 1 };
  }

  /** The offset at which a 1-based line starts; past the last line, the last line's start. */
  lineStart(line: number): number {
    return this.#starts[Math.min(Math.max(line, 1), this.#starts.length) - 1] ?? 0;
  }
}

/** A value of a file together with the place it was read from and the text it was written as. */
export interface Placed<T> {
  readonly value: T;
  readonly span: Span;
  /** The characters between the span's ends: `0.150` stays `0.150`. */
  readonly source: string;
}
