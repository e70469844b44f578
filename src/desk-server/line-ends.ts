/**
 * The line ends of a file. Where all are CR LF the page has `\n` in their place, and the file gets its own
 * back; where they are mixed they stay as they are, each a part of its line, so that no line is changed that
 * nobody touched.
 */
export class LineEnds {
  readonly #allCrLf: boolean;

  constructor(content: string) {
    this.#allCrLf = content.includes('\r\n') && !/\r(?!\n)|(?<!\r)\n/.test(content);
  }

  /** A file's content as the page shows it. */
  shown(content: string): string {
    return this.#allCrLf ? content.replaceAll('\r\n', '\n') : content;
  }

  /** A page's text as it goes into the file. */
  written(text: string): string {
    return this.#allCrLf ? text.replaceAll('\n', '\r\n') : text;
  }
}
