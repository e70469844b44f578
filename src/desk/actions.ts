import { suggestedCures } from '../checks/index.ts';
import { applyEdits, mend } from '../report/index.ts';
import type { Span } from '../text/index.ts';
import { acceptance } from './accept.ts';
import { makeCure } from './cures.ts';
import { findings } from './findings.ts';
import { blankIn, mends } from './mends.ts';
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

/**
 * What can be done about one finding. Each suggested edit is made and checked before it is offered: it costs
 * as many checks of the sheet as there are suggestions, so ask for the findings that somebody looks at.
 */
export function actionsFor(document: DeskDocument, finding: DeskFinding): readonly DeskAction[] {
  const found = document.findings[finding.index];
  if (found === undefined || finding.accepted !== null) return [];
  const made: DeskAction[] = [];
  const texts = new Set<string>();
  if (found.edits !== null) {
    texts.add(applyEdits(document.text, found.edits));
    made.push({
      title: found.fix ?? 'mend it',
      kind: 'fix',
      finding,
      edits: [{ file: found.file, edits: found.edits }],
      blank: null,
    });
  }
  for (const cure of suggestedCures(found, document, document.project.context)) {
    const cured = makeCure(document, cure);
    if (cured === null) continue;
    const text = applyEdits(document.text, cured.edits);
    if (texts.has(text) || !mends(document, found, cured.edits)) continue;
    texts.add(text);
    made.push({
      title: cured.title,
      kind: 'suggested',
      finding,
      edits: [{ file: document.file, edits: cured.edits }],
      blank: blankIn(cured.edits),
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
