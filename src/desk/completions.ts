import { findFrontMatter } from '../sheet/index.ts';
import type { Span } from '../text/index.ts';
import { frontCompletions } from './complete-front.ts';
import { workCompletions } from './complete-work.ts';
import { frontCursor } from './front-cursor.ts';
import { withLineEnds } from './lines.ts';
import type { Completion, DeskDocument } from './model.ts';
import { workCursor } from './work-cursor.ts';

/**
 * What may stand at an offset, the likeliest first, not yet held against what is typed there: an editor
 * filters as its user types on. None where nothing is known.
 */
export function completions(document: DeskDocument, offset: number): readonly Completion[] {
  return completionsAt(document, offset).map((each) => {
    const { edit, blank } = each;
    if (!edit.text.includes('\n')) return each;
    const written = (text: string) => withLineEnds(text, document.text);
    const moved = (at: number) => written(edit.text.slice(0, at)).length;
    return {
      ...each,
      edit: { ...edit, text: written(edit.text) },
      blank: blank && { start: moved(blank.start), end: moved(blank.end) },
    };
  });
}

function completionsAt(document: DeskDocument, offset: number): readonly Completion[] {
  // By the text itself: what was read of the sheet may be a letter older.
  const { text } = document;
  const place = findFrontMatter(text, text.charCodeAt(0) === 0xfeff ? 1 : 0);
  const frontMatter = place.content ?? openFrontMatter(text);
  if (frontMatter !== null && offset <= frontMatter.end) {
    const cursor = frontCursor(text, frontMatter, offset);
    return cursor === null ? [] : frontCompletions(document, cursor);
  }
  if (offset < place.bodyStart) return [];
  return workCompletions(document, workCursor(document, offset), offset);
}

/** Front matter that is being begun, and not closed yet. */
function openFrontMatter(text: string): Span | null {
  const [fence] = /^\uFEFF?---[ \t]*\r?\n/.exec(text) ?? [];
  return fence === undefined ? null : { start: fence.length, end: text.length };
}
