import type { Span } from '../text/index.ts';

/** Where a key stands, found from the place of its value: the last one before it. */
export function keySpanBefore(text: string, key: string, value: Span): Span {
  const start = text.lastIndexOf(key, value.start - 1);
  return start < 0 ? value : { start, end: start + key.length };
}
