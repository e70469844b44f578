import { visible } from '../text/index.ts';
import type { FileReport, PlacedFinding, Refused } from './placed.ts';

function escapeData(text: string): string {
  return text.replace(/%/g, '%25').replace(/\r/g, '%0D').replace(/\n/g, '%0A');
}

function escapeProperty(text: string): string {
  return escapeData(text).replace(/:/g, '%3A').replace(/,/g, '%2C');
}

function annotation(finding: PlacedFinding): string {
  const command = finding.severity === 'note' ? 'notice' : finding.severity;
  const properties = [
    ['file', finding.file],
    ['line', String(finding.line)],
    ['col', String(finding.column)],
    ['endLine', String(finding.endLine)],
    // The runner takes an end column only where the region stays on one line.
    ...(finding.endLine === finding.line ? [['endColumn', String(finding.endColumn)]] : []),
    ['title', finding.name],
  ].map(([key, value]) => `${key}=${escapeProperty(value ?? '')}`);
  const fix = finding.fix === null ? '' : `\nfix: ${visible(finding.fix)}`;
  return `::${command} ${properties.join(',')}::${escapeData(visible(finding.message) + fix)}\n`;
}

/**
 * Findings as workflow commands (`::error file=…,line=…,col=…,title=…::message`), one a line;
 * accepted ones are left out. Escaping as the runner's own toolkit does it: `%`, CR and LF in the
 * message, `:` and `,` too in the properties.
 */
export function toAnnotations(
  reports: readonly FileReport[],
  refused: readonly Refused[] = [],
): string {
  const lines = reports.flatMap((report) =>
    report.findings.filter((finding) => finding.accepted === null).map(annotation),
  );
  for (const { file, message } of refused) {
    lines.push(`::error file=${escapeProperty(file)}::${escapeData(visible(message))}\n`);
  }
  return lines.join('');
}
