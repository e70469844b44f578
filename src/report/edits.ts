import type { Edit, Finding } from '../checks/index.ts';

function before(first: Edit, second: Edit): number {
  return first.span.start - second.span.start || first.span.end - second.span.end;
}

/** Whether two edits touch the same characters, or put text in at the same place. */
function collide(first: Edit, second: Edit): boolean {
  if (first.span.start === second.span.start) return true;
  return first.span.start < second.span.end && second.span.start < first.span.end;
}

function isSame(first: Edit, second: Edit): boolean {
  return (
    first.span.start === second.span.start &&
    first.span.end === second.span.end &&
    first.text === second.text
  );
}

/**
 * The text with all edits made. Everything outside their spans stays, to the character: comments,
 * order, byte order mark; line ends inside an edit's own text become those of the file. An edit
 * that is listed twice is made once. Fails with an `Error` where two edits collide or a span lies
 * outside the text: half a cure is worse than none.
 */
export function applyEdits(text: string, edits: readonly Edit[]): string {
  const lineEnd = /\r\n|\n|\r/.exec(text)?.[0] ?? '\n';
  const ordered = [...edits].sort(before);
  let out = '';
  let at = 0;
  let last: Edit | null = null;
  for (const edit of ordered) {
    if (last !== null && isSame(last, edit)) continue;
    const { start, end } = edit.span;
    if (start < 0 || end < start || end > text.length) {
      throw new Error(
        `an edit at ${start}-${end} lies outside a text of ${text.length} characters`,
      );
    }
    if (last !== null && collide(last, edit)) {
      throw new Error(`two edits collide at ${start}-${end}`);
    }
    out += text.slice(at, start) + edit.text.replace(/\r\n|\n|\r/g, lineEnd);
    at = end;
    last = edit;
  }
  return out + text.slice(at);
}

/** What one round of mending did. */
export interface Mended {
  readonly text: string;
  /** The findings whose edits were all made, in the order they were found. */
  readonly mended: readonly Finding[];
}

/**
 * Makes the edits of every finding that has some and that no editor accepted: all of a finding's
 * edits or none. Of two findings whose edits collide the first is mended; the other is left for a
 * next round, which sees the mended text.
 */
export function mend(text: string, findings: readonly Finding[]): Mended {
  const made: Edit[] = [];
  const mended: Finding[] = [];
  for (const finding of findings) {
    if (finding.edits === null || finding.edits.length === 0 || finding.accepted !== null) continue;
    const fresh = finding.edits.filter((edit) => !made.some((other) => isSame(edit, other)));
    if (fresh.some((edit) => made.some((other) => collide(edit, other)))) continue;
    made.push(...fresh);
    mended.push(finding);
  }
  return { text: made.length === 0 ? text : applyEdits(text, made), mended };
}
