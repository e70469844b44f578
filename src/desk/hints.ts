import type { Span } from '../text/index.ts';
import { ownSpan } from './document.ts';
import type { DeskDocument } from './model.ts';

/** Words to be shown behind a place, which are not part of the text. */
export interface Hint {
  readonly offset: number;
  readonly text: string;
}

/** Behind each `:value[...]` within a range, the figure that it prints. */
export function hints(document: DeskDocument, range: Span): readonly Hint[] {
  return document.sheet.values.flatMap(({ span, setting }) => {
    const own = ownSpan(document, span);
    const text = setting?.value?.text ?? [...(setting?.places.values() ?? [])][0]?.text;
    if (own === null || text === undefined) return [];
    return own.end < range.start || own.start > range.end ? [] : [{ offset: own.end, text }];
  });
}
