import type { Edit, Finding } from '../checks/index.ts';
import { blank } from '../import/index.ts';
import { applyEdits } from '../report/index.ts';
import type { Span } from '../text/index.ts';
import { openDocument } from './document.ts';
import type { DeskDocument } from './model.ts';

/**
 * Whether edits of a document clear a finding and bring no error, but for what stands at a blank that they
 * leave: of one that they leave, it is tried with words in its place.
 */
export function mends(document: DeskDocument, finding: Finding, edits: readonly Edit[]): boolean {
  const { file, project } = document;
  const left = blankIn(edits);
  const made = applyEdits(document.text, edits);
  const text =
    left === null
      ? made
      : made.slice(0, left.start) + words + made.slice(left.start + blank.length);
  const after = openDocument(text, file, project).findings;
  const had = countsOf(document.findings);
  const has = countsOf(after);
  const key = keyOf(finding);
  if ((has.get(key) ?? 0) >= (had.get(key) ?? 0)) return false;
  for (const each of after) {
    if (each.severity !== 'error') continue;
    const known = keyOf(each);
    const count = had.get(known) ?? 0;
    had.set(known, count - 1);
    if (count > 0) continue;
    const isAtBlank =
      each.check === 'blank-to-fill' ||
      (left !== null &&
        each.span.start <= left.start + words.length &&
        each.span.end >= left.start);
    if (left === null || !isAtBlank) return false;
  }
  return true;
}

/** What is written in a blank to try it: a reason, or anything else in words. */
const words = 'as the source has it';

function keyOf({ check, message }: Finding): string {
  return `${check} ${message}`;
}

function countsOf(findings: readonly Finding[]): Map<string, number> {
  const counts = new Map<string, number>();
  for (const each of findings) counts.set(keyOf(each), (counts.get(keyOf(each)) ?? 0) + 1);
  return counts;
}

/** Where the first blank of an edit comes to stand once all are made; null where nothing is left to be written. */
export function blankIn(edits: readonly Edit[]): Span | null {
  let by = 0;
  for (const { span, text } of [...edits].sort((a, b) => a.span.start - b.span.start)) {
    const at = text.search(new RegExp(`(?<![\\w-])${blank}(?![\\w-])`));
    if (at !== -1) {
      const start = span.start + by + at;
      return { start, end: start + blank.length };
    }
    by += text.length - (span.end - span.start);
  }
  return null;
}
