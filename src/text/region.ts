import type { LineIndex, Span } from './span.ts';

/** A stretch of a file for people and programs: 1-based, columns in UTF-16 units, end exclusive. */
export interface Region {
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
}

/** A stretch of one of several files. */
export interface FileRegion extends Region {
  readonly file: string;
}

/** The line and column of both ends of a span. */
export function regionOf(span: Span, lines: LineIndex): Region {
  const start = lines.place(span.start);
  const end = lines.place(Math.max(span.start, span.end));
  return { line: start.line, column: start.column, endLine: end.line, endColumn: end.column };
}
