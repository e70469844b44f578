import { allUnits } from '../../quantity/index.ts';

/**
 * Sizes and short texts as HTML. Figures and words stay what was written; what changes is how they
 * are drawn: a true fraction bar, primes for inch and foot marks, a minus for a hyphen before a
 * figure. A mixed number keeps its hyphen or space, so that 1-7/16 can't be taken for 17/16.
 */

const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Text with the five characters that mean something in HTML written as entities. */
export function escapeHtml(text: string): string {
  return text.replace(/[&<>"']/g, (character) => entities[character] ?? character);
}

/** Where a size may be parted at the end of a line: before a tolerance, a datum, another limit. */
const parting =
  /\s+(?=(?:±|\+\/?-|[–—]|\+\d|to\b|or\b|and\b|per\b|after\b|from\b|below\b|above\b|at\b|with\b|before\b|on\b|\())/u;

/** The parts of a size that stay whole: `29/32`, `+1/32/-1/64 in`. */
export function sizeParts(text: string): readonly string[] {
  return text.trim().split(parting);
}

/** A size of no more letters than this can stay on one line of a narrow column. */
const shortSize = 26;

/**
 * A size as HTML; a number and its unit never part across lines. One that is short is marked `short`,
 * so that a style can keep it whole.
 */
export function typesetSize(text: string): string {
  const parts = sizeParts(text).map((part) => `<span class="together">${figures(part)}</span>`);
  const length = text.trim().length <= shortSize ? ' short' : '';
  return `<span class="size${length}">${parts.join(' ')}</span>`;
}

/** Words behind a number that are its unit, the longest forms first. */
const unitWords = allUnits()
  .flatMap((unit) => unit.spellings)
  .filter((spelling) => /^[\p{L}°]/u.test(spelling))
  .sort((first, second) => second.length - first.length)
  .map((spelling) => spelling.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'))
  .join('|');

/**
 * What stays on one line in running words: years from and to, a number with its word before it or its
 * unit behind it, a mixed number, a thread.
 */
const keptWhole = new RegExp(
  `(?<![\\p{L}\\d.,/⁄-])(?:(?:nos?|pp?|figs?)\\. )?\\d+(?:[.,/⁄–-]\\d+)*(?: \\d+[/⁄]\\d+)?(?: (?:${unitWords})(?![\\p{L}\\d]))?`,
  'giu',
);

/** A span of years keeps its figures and takes the dash that stands for "to". */
const years = /^((?:1[89]|20)\d\d)-((?:1[89]|20)\d\d)$/;

/**
 * A line of words (a title, a note, a reason) as HTML, its fractions and primes drawn; numbers stay
 * with their units, and a span of years is not parted.
 */
export function typesetWords(written: string): string {
  // Quotation marks are drawn while each still has its neighbors.
  const text = marks(written, false, false);
  let html = '';
  let from = 0;
  for (const match of text.matchAll(keptWhole)) {
    const whole = match[0];
    if (!/[\s-]/.test(whole)) continue;
    const end = match.index + whole.length;
    // What begins a longer figure or word is not cut off from it.
    if (/^(?:[.,/⁄-]?\d|\p{L}|-\p{L})/u.test(text.slice(end))) continue;
    html += figures(text.slice(from, match.index));
    html += `<span class="together">${figures(whole.replace(years, '$1–$2'))}</span>`;
    from = end;
  }
  return html + figures(text.slice(from));
}

const fraction = /(?<![\p{L}\d.,/⁄])((\d+)([- ]))?(\d{1,3})([/⁄])(\d{1,3})(?![\d⁄]|\/(?![-−+]))/gu;
const vulgarDenominators = new Set([
  2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 16, 20, 24, 32, 48, 64, 100, 128,
]);

/** A stretch of text and what it is drawn as: plain type, or the figures above or below a fraction bar. */
export interface Run {
  readonly as: 'plain' | 'upper' | 'lower';
  readonly text: string;
}

/** A text as it is drawn, for a page that is no HTML: nothing in it is escaped. */
export function typesetRuns(text: string): readonly Run[] {
  const pieces: Run[] = [];
  let from = 0;
  for (const match of text.matchAll(fraction)) {
    const [whole, mixed, , , upper, , lower] = match;
    if (upper === undefined || lower === undefined) continue;
    if (!vulgarDenominators.has(Number(lower))) continue;
    const start = match.index + (mixed?.length ?? 0);
    // The part of a mixed number that stands before the fraction goes with the plain text.
    pieces.push({ as: 'plain', text: text.slice(from, start) });
    pieces.push({ as: 'upper', text: `${upper}⁄` }, { as: 'lower', text: lower });
    from = match.index + whole.length;
  }
  pieces.push({ as: 'plain', text: text.slice(from) });
  return pieces.map((piece, at) =>
    piece.as === 'plain'
      ? { as: 'plain', text: marks(piece.text, at > 0, at < pieces.length - 1) }
      : piece,
  );
}

function figures(text: string): string {
  return typesetRuns(text)
    .map(({ as, text: drawn }) => {
      if (as === 'upper') return `<span class="fraction"><span class="upper">${drawn}</span>`;
      return as === 'lower' ? `<span class="lower">${drawn}</span></span>` : escapeHtml(drawn);
    })
    .join('');
}

/** Primes, minus signs and quotation marks; whether a fraction stands before or after the text. */
function marks(text: string, afterFigure: boolean, beforeFigure: boolean): string {
  // A figure stands in for the fraction, so that what looks for one finds it.
  const drawn = `${afterFigure ? '0' : ''}${text}${beforeFigure ? '0' : ''}`
    .replace(/(?<=\d\s?)"(?=$|[\s,.;:)×–-])/g, '″')
    .replace(/(?<=\d)'(?=$|[\s,.;:)\d×–-])/g, '′')
    .replace(/(?<=^|[\s(/+])-(?=\.?\d)/g, '−')
    .replace(/(?<=^|[\s([{–—-])"/g, '“')
    .replaceAll('"', '”')
    .replace(/(?<=^|[\s([{–—-])'(?!\d)/g, '‘')
    .replaceAll("'", '’');
  return drawn.slice(afterFigure ? 1 : 0, beforeFigure ? -1 : undefined);
}
