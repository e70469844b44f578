import { jsonText } from '../text/index.ts';
import { type Counts, countFindings } from './counts.ts';
import type { FileReport, PlacedFinding, Refused } from './placed.ts';

/**
 * One finding as JSON. The first six keys are the promised ones; the others are there for
 * programs that want more, and left out where there is nothing to say.
 */
export function findingJson(finding: PlacedFinding): string {
  return jsonText({
    name: finding.name,
    severity: finding.severity,
    file: finding.file,
    line: finding.line,
    column: finding.column,
    message: finding.message,
    endLine: finding.endLine,
    endColumn: finding.endColumn,
    fix: finding.fix ?? undefined,
    compared: finding.compared ?? undefined,
    related: finding.related.length > 0 ? finding.related : undefined,
    edits: finding.edits ?? undefined,
    accepted: finding.accepted ?? undefined,
  });
}

/**
 * All findings as one JSON object on one line: `{"findings":[…],"counts":{…},"version":1}`,
 * held to schemas/findings.schema.json. Accepted findings
 * are listed, with `accepted`, and not counted; files that could not be read stand in `refused`.
 */
export function toJson(reports: readonly FileReport[], refused: readonly Refused[] = []): string {
  const findings = reports.flatMap((report) => report.findings.map(findingJson));
  return jsonObject(findings, countFindings(reports), refused);
}

/**
 * The object around findings that are JSON already, for who gathers them file by file and keeps
 * nothing else.
 */
export function jsonObject(
  findings: readonly string[],
  { error, warning, note }: Counts,
  refused: readonly Refused[],
): string {
  const more = refused.length > 0 ? `,"refused":${jsonText(refused)}` : '';
  const counts = jsonText({ error, warning, note });
  return `{"findings":[${findings.join(',\n')}],"counts":${counts}${more},"version":1}\n`;
}
