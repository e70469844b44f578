import type { Span } from '../text/index.ts';

/** How far around a figure its sentence is looked for, in characters: a bound on a hostile sheet. */
const REACH = 400;

/** Where one sentence ends: a full stop before a capital, or a semicolon. */
const END = /[.!?](?=["')\]]?\s+["'(]?[A-Z:])|;(?=\s)|\n\s*\n/g;

/** The sentence around a place of a block, in small letters and without line ends, cut at the place; `row` for a table's. */
export function sentenceAround(
  text: string,
  block: Span,
  place: Span,
): { readonly before: string; readonly after: string; readonly row: boolean } {
  const row = wholeRow(text, block);
  const { start, end } = row ?? block;
  const ahead = text.slice(Math.max(start, place.start - REACH), place.start);
  const behind = text.slice(place.end, Math.min(end, place.end + REACH));
  let from = 0;
  for (const match of ahead.matchAll(END)) from = match.index + 1;
  const to = behind.search(END);
  return {
    before: level(ahead.slice(from)),
    after: level(to < 0 ? behind : behind.slice(0, to)),
    row: row !== null,
  };
}

/** In a table the sentence is the row: one cell names what another cell gives. */
function wholeRow(text: string, block: Span): Span | null {
  const before = /[|][ \t]*$/.test(text.slice(Math.max(0, block.start - 20), block.start));
  const within = text.charAt(block.start) === '|' || text.charAt(block.end - 1) === '|';
  if (!before && !within) return null;
  const start = Math.max(text.lastIndexOf('\n', block.start - 1) + 1, block.start - REACH);
  const line = text.indexOf('\n', block.end);
  return { start, end: Math.min(line < 0 ? text.length : line, block.end + REACH) };
}

function level(text: string): string {
  return text
    .toLowerCase()
    .replace(/\s+/g, ' ')
    .replace(/[*_]+(?=\p{L})|(?<=\p{L})[*_]+/gu, '');
}
