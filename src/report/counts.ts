import type { FileReport } from './placed.ts';

/** How many findings stand, by severity; accepted ones are counted apart. */
export interface Counts {
  readonly error: number;
  readonly warning: number;
  readonly note: number;
  readonly accepted: number;
  /** Findings that `--fix` would mend. */
  readonly mendable: number;
  /** Files with a finding that stands. */
  readonly files: number;
}

/** Counts the findings of all files. */
export function countFindings(reports: Iterable<FileReport>): Counts {
  const counts = { error: 0, warning: 0, note: 0, accepted: 0, mendable: 0, files: 0 };
  for (const report of reports) {
    let stands = false;
    for (const finding of report.findings) {
      if (finding.accepted !== null) {
        counts.accepted++;
        continue;
      }
      stands = true;
      counts[finding.severity]++;
      if (finding.edits !== null) counts.mendable++;
    }
    if (stands) counts.files++;
  }
  return counts;
}

/** The sum of two counts. */
export function addCounts(first: Counts, second: Counts): Counts {
  return {
    error: first.error + second.error,
    warning: first.warning + second.warning,
    note: first.note + second.note,
    accepted: first.accepted + second.accepted,
    mendable: first.mendable + second.mendable,
    files: first.files + second.files,
  };
}
