import { mend } from '../report/index.ts';
import type { Span } from '../text/index.ts';
import { acceptance } from './accept.ts';
import { findings } from './findings.ts';
import type { DeskAction, DeskDocument, DeskFinding } from './model.ts';

/**
 * What can be done about the findings that touch a range (`start` equal to `end` for a cursor): certain
 * fixes first, then the cures that are likely, then acceptance. Accepted findings offer nothing.
 */
export function actions(document: DeskDocument, range: Span): readonly DeskAction[] {
  const there = findings(document).filter(
    ({ span, accepted }) => accepted === null && span.start <= range.end && span.end >= range.start,
  );
  const all = there.flatMap((finding) => actionsFor(document, finding));
  const rank = { fix: 0, suggested: 1, accept: 2 };
  return all.sort((a, b) => rank[a.kind] - rank[b.kind]);
}

/** What can be done about one finding. */
export function actionsFor(document: DeskDocument, finding: DeskFinding): readonly DeskAction[] {
  const found = document.findings[finding.index];
  if (found === undefined || finding.accepted !== null) return [];
  const made: DeskAction[] = [];
  if (found.edits !== null) {
    made.push({
      title: found.fix ?? 'mend it',
      kind: 'fix',
      finding,
      edits: [{ file: found.file, edits: found.edits }],
      blank: null,
    });
  }
  const accepted = acceptance(document, found);
  if (accepted !== null) {
    const at = found.subject === null ? '' : ` at \`${found.subject}\``;
    made.push({
      title: `accept \`${found.check}\`${at}, with a reason`,
      kind: 'accept',
      finding,
      edits: [{ file: document.file, edits: [accepted.edit] }],
      blank: accepted.blank,
    });
  }
  return made;
}

/** The text with every certain fix made that can be made at once, as `--fix` makes them. */
export function mended(document: DeskDocument): string {
  const own = document.findings.filter(({ file }) => file === document.file);
  return mend(document.text, own).text;
}
