import { allUnits } from '../../quantity/index.ts';

/**
 * Sizes and short texts as HTML, the one place for all prints. Figures and words stay what was written;
 * what changes is how they are drawn: a true fraction bar, primes for inch and foot marks, a minus for a
 * hyphen before a figure, raised powers, a lowered 2 in H2O, unequal tolerances one above the other. What
 * joins a mixed number is set as a narrow space: 1-7/16 is no range from 1, and no 17/16 either.
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

/**
 * Where a size may be parted at the end of a line: before a tolerance, a datum, another limit, between
 * the gauges of a list, and before what it comes to in another unit.
 */
const parting =
  /(?<=;)\s+|(?<=,)\s+(?=\p{L})|(?<=[\p{L}″′°],)\s+(?=[\d.−-])|\s+(?=(?:±|\+\/?-|[–—]|\+\.?\d|to\b|or\b|and\b|per\b|after\b|from\b|below\b|above\b|at\b|with\b|before\b|on\b|\())/u;

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
  const parts = sizeParts(text).map((part) => `<span class="together">${limits(part)}</span>`);
  const length = text.trim().length <= shortSize ? ' short' : '';
  return `<span class="size${length}">${parts.join(' ')}</span>`;
}

/** A tolerance with another figure up than down, and what stands behind it: `+1/32/-1/64 in`. */
const unequal = /^(\+\.?\d[\d.,/⁄\s-]*?)\s*[/,]?\s*([-−](?:\.?\d)[\d.,/⁄]*)(?![\d.,/⁄])(.*)$/u;

function limits(part: string): string {
  const [, up, down, rest] = unequal.exec(part) ?? [];
  if (up === undefined || down === undefined || rest === undefined) return figures(part);
  return `<span class="limits"><span>${figures(up)}</span> <span>${figures(down)}</span></span>${figures(rest)}`;
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
  `(?<![\\p{L}\\d.,/⁄-])(?:(?:nos?|pp?|figs?)\\. |[±≤≥<>≈×+] ?)?(?:\\.(?=\\d))?\\d+(?:[.,/⁄–-]\\d+)*(?: \\d+[/⁄]\\d+)?(?: (?:${unitWords})(?![\\p{L}\\d])(?: (?:min|max)(?![\\p{L}\\d/]))?)?`,
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
  if (!hasFigure.test(text)) return figures(text);
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

/** What is kept whole, raised or bound has a figure in it, or the bar of a fraction. */
const hasFigure = /[\d⁄]/;

const fraction = /(?<![\p{L}\d.,/⁄])((\d+)([- ]))?(\d{1,3})([/⁄])(\d{1,3})(?![\d⁄]|\/(?![-−+]))/gu;
const vulgarDenominators = new Set([
  2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 16, 20, 24, 32, 48, 64, 100, 128,
]);

/** A stretch of text and what it is drawn as: plain type, or the figures above or below a fraction bar. */
export interface Run {
  readonly as: 'plain' | 'upper' | 'lower';
  readonly text: string;
}

/** No line ends at it, and it is narrower than what parts words. */
const NARROW = '\u202f';

/** A text as it is drawn, for a page that is no HTML: nothing in it is escaped. */
export function typesetRuns(text: string): readonly Run[] {
  const pieces: Run[] = [];
  let from = 0;
  for (const match of text.matchAll(fraction)) {
    const [whole, mixed, , , upper, , lower] = match;
    if (upper === undefined || lower === undefined) continue;
    if (!vulgarDenominators.has(Number(lower))) continue;
    // The whole number of a mixed one goes with the plain text; a narrow space is what joins the two.
    const joined = mixed === undefined ? '' : `${mixed.slice(0, -1)}${NARROW}`;
    pieces.push({ as: 'plain', text: text.slice(from, match.index) + joined });
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
  const runs = typesetRuns(text);
  return runs
    .map(({ as, text: drawn }, at) => {
      if (as === 'upper') return `<span class="fraction"><span class="upper">${drawn}</span>`;
      if (as === 'lower') return `<span class="lower">${drawn}</span></span>`;
      // What stands behind a fraction stands behind a figure.
      return at === 0 ? signs(drawn) : signs(`⁄${drawn}`).slice(1);
    })
    .join('');
}

/** Powers of a unit behind a figure, a slash or `per`. */
const power = /(?<=[\d\s⁄/″]|per )((?:[cdkm]?m|in|ft|yd))([23])(?![\d\p{L}]|[.,⁄-]\d)/gu;

/** `min` and `max` behind a figure with its unit, or before the figure: no minutes. */
const bound = new RegExp(
  `(?<=[\\d⁄](?:\\s?(?:${unitWords})|[″′%°])(?: \\p{L}+)?\\s)(?:min|max)(?![\\p{L}\\d/])|^(?:min|max)(?=\\s+(?:\\.?\\d|$))`,
  'giu',
);

/** A text for a page that is no HTML, its bounds in the capitals that a style gives them elsewhere. */
export function boundsInCapitals(text: string): string {
  return text.replace(bound, (word) => word.toUpperCase());
}

/** Codes and part numbers in which a zero may stand beside an O. */
const code =
  /(?<![\p{L}\d])(?=[\d/-]*\p{Lu})(?=[\p{Lu}/-]*\d)[\p{Lu}\d]+(?:[/-][\p{Lu}\d]+)*(?![\p{L}\d])/gu;

/** Plain text as HTML, with what is raised, lowered or drawn otherwise. */
function signs(text: string): string {
  // All of these have a figure in them or right behind them, and most words have none.
  if (!hasFigure.test(text) && !/^(?:min|max)\s/.test(text)) return escapeHtml(text);
  return escapeHtml(text)
    .replace(power, '$1<sup class="power">$2</sup>')
    .replace(/H2O(?![\p{L}\d])/gu, 'H<sub>2</sub>O')
    .replace(bound, '<span class="bound">$&</span>')
    .replace(code, (whole) => whole.replaceAll('0', '<span class="slashed">0</span>'));
}

/** Primes, minus signs and quotation marks; whether a fraction stands before or after the text. */
function marks(text: string, afterFigure: boolean, beforeFigure: boolean): string {
  // A figure stands in for the fraction, so that what looks for one finds it.
  const drawn = `${afterFigure ? '0' : ''}${text}${beforeFigure ? '0' : ''}`
    // What is quoted may end in a figure, and its mark is no inch then.
    .replace(/(^|[\s([{–—-])"(?=[^\s"])([^"]*\p{L}[^"]*)"(?=$|[\s,.;:!?)])/gu, '$1“$2”')
    .replace(/(?<=\d\s?)"(?=$|[\s,.;:)×–-])/g, '″')
    .replace(/(?<=\d)'(?=$|[\s,.;:)\d×–-])/g, '′')
    .replace(/(?<=^|[\s(/+])-(?=\.?\d)/g, '−')
    .replace(/(?<=\d)\s?%/g, `${NARROW}%`)
    .replace(/(?<=^|[\s([{–—-])"/g, '“')
    .replaceAll('"', '”')
    .replace(/(?<=^|[\s([{–—-])'(?!\d)/g, '‘')
    .replaceAll("'", '’');
  return drawn.slice(afterFigure ? 1 : 0, beforeFigure ? -1 : undefined);
}
