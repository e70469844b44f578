import type { Span } from './span.ts';

/** A fault of a YAML text in a restorer's words; `span` as offsets into the YAML text itself. */
export interface YamlFault {
  readonly span: Span;
  readonly message: string;
  readonly fix: string | null;
  /** What may be meant in place of the words; absent where nobody can tell. */
  readonly write?: readonly string[];
}

/** A text as a YAML scalar that nothing can be mistaken in. */
export function quoted(text: string): string {
  // A message is no place for a page of text.
  if (text.length > 80) return `'${text.slice(0, 60)}...'`;
  return text.includes("'") ? JSON.stringify(text) : `'${text}'`;
}

/** A fault with its place. */
export function fault(span: Span, message: string, fix: string | null): YamlFault {
  return { span, message, fix };
}

/** A value that says what it should only once it stands in quotes. */
export function unquotedFault(span: Span, message: string, value: string): YamlFault {
  const written = quoted(value);
  const write = value.length > 80 ? {} : { write: [written] };
  return { span, message, fix: `quote it: ${written}`, ...write };
}

/** From `at` to the line's end, blanks at the end left out. */
export function restOfLine(text: string, at: number): Span {
  let end = at;
  while (end < text.length && text.charCodeAt(end) !== 10 && text.charCodeAt(end) !== 13) end += 1;
  while (end > at && (text.charCodeAt(end - 1) === 32 || text.charCodeAt(end - 1) === 9)) end -= 1;
  return { start: at, end };
}

/** The first word from `at` on; at the very end of the text, the last word before it. */
export function firstWord(text: string, at: number): Span {
  const after = /\S+/g;
  after.lastIndex = at;
  const match = after.exec(text);
  if (match) return { start: match.index, end: match.index + match[0].length };
  let end = at;
  while (end > 0 && /\s/.test(text.charAt(end - 1))) end -= 1;
  let start = end;
  while (start > 0 && !/\s/.test(text.charAt(start - 1))) start -= 1;
  return { start, end };
}

/** Where the line of a place begins. */
export function lineStart(text: string, at: number): number {
  let start = at;
  while (start > 0 && text.charCodeAt(start - 1) !== 10 && text.charCodeAt(start - 1) !== 13) {
    start -= 1;
  }
  return start;
}
