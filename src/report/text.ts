import type { Severity } from '../checks/index.ts';
import { visible } from '../text/index.ts';
import { type Counts, countFindings } from './counts.ts';
import { type Paint, paint } from './paint.ts';
import type { FileReport, PlacedFinding } from './placed.ts';
import { wrap } from './wrap.ts';

export interface TextOptions {
  readonly color?: boolean;
  /** Columns of the terminal; null or absent where lines are not to be broken. */
  readonly width?: number | null;
  /** Whether accepted findings are shown, with the editor's reason. */
  readonly all?: boolean;
}

function severityPaint(severity: Severity, ink: Paint): (text: string) => string {
  return severity === 'error' ? ink.red : severity === 'warning' ? ink.yellow : ink.blue;
}

function severityWord(finding: PlacedFinding): string {
  return finding.accepted === null ? finding.severity : 'accepted';
}

/**
 * One file's findings, grouped under its name, each line ended; the empty text where nothing is to
 * be shown.
 */
export function fileText(report: FileReport, options: TextOptions = {}): string {
  const ink = paint(options.color === true);
  const shown = report.findings.filter((f) => options.all === true || f.accepted === null);
  if (shown.length === 0) return '';
  const places = shown.map((finding) => `${finding.line}:${finding.column}`);
  const placeWidth = Math.max(...places.map((place) => place.length));
  const wordWidth = Math.max(...shown.map((finding) => severityWord(finding).length));
  const indent = ' '.repeat(2 + placeWidth + 2);
  // Below thirty columns broken lines are harder to read than long ones.
  const room = options.width ? Math.max(30, options.width - indent.length) : null;
  const out = [ink.underline(visible(report.file))];
  const block = (label: string, text: string, tint: (text: string) => string) => {
    const hang = ' '.repeat(label.length);
    wrap(text, room === null ? null : room - label.length).forEach((line, index) => {
      out.push(`${indent}${index === 0 ? tint(label) : hang}${line}`);
    });
  };
  shown.forEach((finding, index) => {
    const place = (places[index] ?? '').padStart(placeWidth);
    const word = severityWord(finding).padEnd(wordWidth);
    const tint = finding.accepted === null ? severityPaint(finding.severity, ink) : ink.dim;
    out.push(`  ${ink.dim(place)}  ${tint(word)}  ${ink.bold(finding.name)}`);
    block('', visible(finding.message), ink.dim);
    if (finding.accepted !== null) block('accepted: ', visible(finding.accepted), ink.dim);
    else if (finding.fix !== null) block('fix: ', visible(finding.fix), ink.green);
    for (const other of finding.related) {
      const file = other.file === undefined ? '' : `${other.file}:`;
      block('see: ', visible(`${file}${other.line}:${other.column} ${other.label}`), ink.dim);
    }
  });
  return `${out.join('\n')}\n`;
}

function amount(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/**
 * `3 errors, 1 warning in 2 of 8 sheets`, and what else there is to say about the whole. `noun` is
 * `file` where more than sheets was read.
 */
export function summaryText(
  counts: Counts,
  sheets: number,
  options: TextOptions = {},
  noun: 'sheet' | 'file' = 'sheet',
): string {
  const ink = paint(options.color === true);
  const parts: string[] = [];
  if (counts.error > 0) parts.push(ink.red(amount(counts.error, 'error')));
  if (counts.warning > 0) parts.push(ink.yellow(amount(counts.warning, 'warning')));
  if (counts.note > 0) parts.push(ink.blue(amount(counts.note, 'note')));
  const accepted = counts.accepted > 0 ? `; ${counts.accepted} accepted by the editor` : '';
  if (parts.length === 0) {
    return `${ink.green('No findings')} in ${amount(sheets, noun)}${accepted}\n`;
  }
  const where = sheets === 1 ? `1 ${noun}` : `${counts.files} of ${amount(sheets, noun)}`;
  const mend = counts.mendable > 0 ? `; ${counts.mendable} can be mended with check --fix` : '';
  return `${parts.join(', ')} in ${where}${accepted}${mend}\n`;
}

/**
 * All findings as text for people: grouped by file, then one summary line. `sheets` is how many
 * files were read, those without a finding included.
 */
export function toText(
  reports: readonly FileReport[],
  options: TextOptions & { readonly sheets?: number } = {},
): string {
  const groups = reports.map((report) => fileText(report, options)).filter((text) => text !== '');
  const summary = summaryText(countFindings(reports), options.sheets ?? reports.length, options);
  return [...groups, summary].join('\n');
}
