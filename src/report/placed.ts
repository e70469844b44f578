import type { AcrossFinding, Finding, Severity } from '../checks/index.ts';
import { linesOf } from '../sheet/index.ts';
import type { Sheet } from '../sheet/model.ts';
import { type LineIndex, type Region, regionOf } from '../text/index.ts';

export { type Region, regionOf };

/** A finding whose spans are resolved, so that it outlives the text it was found in. */
export interface PlacedFinding extends Region {
  readonly name: string;
  readonly severity: Severity;
  readonly file: string;
  readonly message: string;
  readonly fix: string | null;
  readonly compared: readonly [string, string] | null;
  /** Other places; `file` says in which file, where it is another one. */
  readonly related: readonly (Region & { readonly label: string; readonly file?: string })[];
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

/** Resolves the spans of one file's findings; their order is kept. */
export function placeFindings(findings: readonly Finding[], lines: LineIndex): PlacedFinding[] {
  return placeIn(findings, () => lines);
}

/**
 * A sheet's findings as reports of the files they stand in: its own first, then, where it is based on
 * another, those that stand there.
 */
export function placeSheet(sheet: Sheet, findings: readonly Finding[]): readonly FileReport[] {
  const reports = new Map<string, PlacedFinding[]>([[sheet.file, []]]);
  for (const placed of placeIn(findings, linesOf(sheet))) {
    const known = reports.get(placed.file);
    if (known) known.push(placed);
    else reports.set(placed.file, [placed]);
  }
  return [...reports].map(([file, placed]) => ({ file, findings: placed }));
}

function placeIn(
  findings: readonly Finding[],
  linesOfFile: (file: string) => LineIndex,
): PlacedFinding[] {
  return findings.map((finding) => {
    const lines = linesOfFile(finding.file);
    return {
      name: finding.check,
      severity: finding.severity,
      file: finding.file,
      ...regionOf(finding.span, lines),
      message: finding.message,
      fix: finding.fix,
      compared: finding.compared,
      related: finding.related.map(({ span, label, file }) => ({
        ...regionOf(span, file === undefined ? lines : linesOfFile(file)),
        label,
        ...(file === undefined ? {} : { file }),
      })),
      edits:
        finding.edits?.map((edit) => ({ ...regionOf(edit.span, lines), text: edit.text })) ?? null,
      accepted: finding.accepted,
    };
  });
}

/** Findings between sheets, whose places are resolved already, as reports of one file each. */
export function placeAcross(findings: readonly AcrossFinding[]): FileReport[] {
  const reports = new Map<string, PlacedFinding[]>();
  for (const { check, at, related, ...finding } of findings) {
    const placed: PlacedFinding = {
      name: check,
      ...finding,
      ...at,
      related: related.map(({ at: { file, ...region }, label }) => ({
        ...region,
        label,
        ...(file === at.file ? {} : { file }),
      })),
      edits: null,
    };
    const known = reports.get(at.file);
    if (known) known.push(placed);
    else reports.set(at.file, [placed]);
  }
  return [...reports].map(([file, placed]) => ({ file, findings: placed }));
}
