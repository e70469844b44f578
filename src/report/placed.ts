import type { Finding, Severity } from '../checks/define.ts';
import type { LineIndex, Span } from '../text/span.ts';

/** A stretch of a file for people and programs: 1-based, columns in UTF-16 units, end exclusive. */
export interface Region {
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
}

/** A finding whose spans are resolved, so that it outlives the text it was found in. */
export interface PlacedFinding extends Region {
  readonly name: string;
  readonly severity: Severity;
  readonly file: string;
  readonly message: string;
  readonly fix: string | null;
  readonly compared: readonly [string, string] | null;
  readonly related: readonly (Region & { readonly label: string })[];
  /** What `--fix` would write; null where no cure is certain. */
  readonly edits: readonly (Region & { readonly text: string })[] | null;
  /** The editor's reason; null where the finding stands. */
  readonly accepted: string | null;
}

/** All findings of one file, by place. */
export interface FileReport {
  readonly file: string;
  readonly findings: readonly PlacedFinding[];
}

/** A file that could not be read at all, and why, in one sentence each. */
export interface Refused {
  readonly file: string;
  readonly message: string;
  readonly fix: string | null;
}

/** The line and column of both ends of a span. */
export function regionOf(span: Span, lines: LineIndex): Region {
  const start = lines.place(span.start);
  const end = lines.place(Math.max(span.start, span.end));
  return { line: start.line, column: start.column, endLine: end.line, endColumn: end.column };
}

/** Resolves the spans of one file's findings; their order is kept. */
export function placeFindings(findings: readonly Finding[], lines: LineIndex): PlacedFinding[] {
  return findings.map((finding) => ({
    name: finding.check,
    severity: finding.severity,
    file: finding.file,
    ...regionOf(finding.span, lines),
    message: finding.message,
    fix: finding.fix,
    compared: finding.compared,
    related: finding.related.map((place) => ({
      ...regionOf(place.span, lines),
      label: place.label,
    })),
    edits:
      finding.edits?.map((edit) => ({ ...regionOf(edit.span, lines), text: edit.text })) ?? null,
    accepted: finding.accepted,
  }));
}
