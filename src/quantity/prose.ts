import type { WireGauge } from './gauge-systems.ts';
import { LETTERS_PATTERN } from './gauge-words.ts';
import { hasUnit, partsAt } from './grammar.ts';
import type { Dimension, GaugeBook, Statement } from './model.ts';
import { normalize } from './normalize.ts';
import { statementFrom } from './statement.ts';

/** A size found in running text: offsets into the text, end exclusive. */
export interface FoundStatement {
  readonly start: number;
  readonly end: number;
  readonly statement: Statement;
  /** Whether its number is said in words: `ten flats`, `half a turn`. */
  readonly worded: boolean;
}

/** Words that a number said in words begins with; `a` only before what may be counted by it. */
const NUMBER_WORD =
  '(?:half|quarter|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thirteen|fourteen|fifteen' +
  '|sixteen|seventeen|eighteen|nineteen|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety)(?![a-z])' +
  '|an? (?=(?:full |whole |complete )?(?:turn|flat|notch|half|third|quarter|eighth|sixteenth|hundred|thousand))';

/** Whether a text may hold a size at all: most stretches of prose are settled by this look. */
const ANY_NUMBER = new RegExp(`[\\d½⅓⅔¼¾⅕⅛⅜⅝⅞]|drill|letter|\\b(?:${NUMBER_WORD})`, 'i');

/**
 * Where a size may start: a figure that is no part of a word or a longer number, a drill's letter, or
 * a number in words.
 */
const START = new RegExp(
  '(?:\\b(?:no|nos|number)\\.? ?|[#№] ?)?(?:\\d|[.]\\d|[½⅓⅔¼¾⅕⅛⅜⅝⅞])' +
    '|\\b(?:letter|drill|drill size) [a-z]\\b|\\b[a-z] (?:twist )?drill\\b' +
    `|\\b(?:${LETTERS_PATTERN}) \\d|\\b(?:${NUMBER_WORD})`,
  'g',
);

/**
 * What is said in words and is a size. `One bar` of a grille, `two pounds` of grease and `ten
 * minutes` are none.
 */
const WORDED: ReadonlySet<Dimension> = new Set([
  'turns',
  'notches',
  'length',
  'angle',
  'speed',
  'torque',
  'vacuum',
]);

/**
 * Words before a figure that are part of the size: `about 1/2 turn`, `between 18 and 22 thou`. `up to`
 * is none of them: nuts are drawn up to their torque.
 */
const LEAD =
  /\b(?:about|approximately|approx\.?|roughly|at least|at most|not less than|no less than|not more than|no more than|not over|not exceeding|between|minimum|maximum|minimum of|maximum of) $/;

/** How far around an inch mark other quotation marks are looked for, in characters. */
const LINE = 200;

/** What makes `2 in` two inches and not the start of `2 in the set`. */
const AFTER_INCH =
  /^ ?(?:$|[.,;:)\]!?]|-|–|(?:wire|leaf|drill|feeler|gauge|gap|clearance|min|max|to|or|and|below|above|from|of|out|wide|long|deep|high|thick|diameter|dia|bore|at|with|on)\b)/;

/**
 * Finds every figure with a unit in running text: each is read as far as the notation goes. Plain
 * numbers, dates and part numbers are passed over.
 */
export function scanStatements(
  text: string,
  options: { readonly gauges: GaugeBook; readonly swg?: WireGauge | null },
): FoundStatement[] {
  if (!ANY_NUMBER.test(text)) return [];
  const lower = normalize(text);
  const context = { gauges: options.gauges, swg: options.swg ?? ('imperial' as const) };
  const found: FoundStatement[] = [];
  START.lastIndex = 0;
  for (let match = START.exec(lower); match; match = START.exec(lower)) {
    const at = match.index;
    if (isInsideWord(lower, at) || isNoSize(text, lower, at)) {
      START.lastIndex = endOfFigure(lower, at, match[0].length);
      continue;
    }
    const lead = LEAD.exec(lower.slice(Math.max(0, at - 24), at));
    const start = at - (lead ? lead[0].length : 0);
    const parts = partsAt(lower, start, context);
    const read = parts && !('problem' in parts) && hasUnit(parts) ? parts : null;
    const built = read ? statementFrom(text, read, context, null) : null;
    const worded = /^[a-z]/.test(match[0]) && !/[\d½⅓⅔¼¾⅕⅛⅜⅝⅞]|drill|letter/.test(match[0]);
    if (read && built && !('problem' in built) && isMeant(text, lower, read.end, built, worded)) {
      found.push(withoutFullStop(text, { start, end: read.end, statement: built, worded }));
      START.lastIndex = Math.max(read.end, at + 1);
    } else {
      START.lastIndex = endOfFigure(lower, at, match[0].length);
    }
  }
  return found;
}

/**
 * `5 mm.` at the end of a sentence: the stop is the sentence's. In `550 r.p.m. and` it belongs to the
 * unit: a sentence that went on would begin with a capital.
 */
function withoutFullStop(text: string, found: FoundStatement): FoundStatement {
  if (text.charAt(found.end - 1) !== '.') return found;
  if (/^(?:[,;:)]|\s+[a-z(])/.test(text.slice(found.end, found.end + 8))) return found;
  const end = found.end - 1;
  return { ...found, end, statement: { ...found.statement, text: text.slice(found.start, end) } };
}

/** A figure glued to a letter, a dash or another figure before it belongs to a name or a date. */
function isInsideWord(lower: string, at: number): boolean {
  return at > 0 && /[\p{L}\p{N}.,/⁄:-]/u.test(lower.charAt(at - 1));
}

/** A unit of one letter glued to its figure, or an upper-case M or N: a mark or a name, no size. */
const ONE_LETTER = /\d[A-Za-z]$|(?:^|[^A-Za-z])[MN]$/;

/** `2 a`, `3 v`: volts and amperes are told with capitals, or in whole words. */
const SMALL_LETTER = /(?:^|[^A-Za-z])[av]$/;

const LETTER_DRILL = /(?:(letter)|drill(?: size)?) ([a-z])\b|([a-z]) (?:twist )?drill\b/y;

/**
 * What has the look of a size and is none: the `drill a` of `drill a hole`, a decade (`1950s`), the
 * pitch of `M6 x 1.0 mm`, a thread's name.
 */
function isNoSize(text: string, lower: string, at: number): boolean {
  LETTER_DRILL.lastIndex = at;
  const drill = LETTER_DRILL.exec(lower);
  if (drill) {
    const letter = drill[2] ?? drill[3] ?? '';
    const original = text.charAt(lower.indexOf(letter, drill[2] ? LETTER_DRILL.lastIndex - 1 : at));
    const isWord = drill[1] === undefined && (letter === 'a' || letter === 'i');
    return isWord || original === letter;
  }
  const rest = lower.slice(at, at + 24);
  if (/^\d{4}s\b/.test(rest)) return true;
  if (/^(?:no\.? ?|#)?\d+(?:\/\d+)?(?: in\.?|")?[- x]\d+ ?(?:un|bs|nf|nc|ba|tpi|thread)/.test(rest))
    return true;
  return /\bm\d+(?:\.\d+)? ?[x×] ?$/.test(lower.slice(Math.max(0, at - 12), at));
}

function endOfFigure(lower: string, at: number, length: number): number {
  const rest = /[\d.,/:-]*/y;
  rest.lastIndex = at + length;
  return rest.exec(lower) ? Math.max(rest.lastIndex, at + 1) : at + 1;
}

/** Whether `2 in`, `2"` or `27M`, a mark cast on a body, is really a size. */
function isMeant(
  text: string,
  lower: string,
  end: number,
  statement: Statement,
  worded: boolean,
): boolean {
  // `leave the old one in`: no inches without their word.
  if (worded)
    return WORDED.has(statement.dimension) && !/(?:^|[^a-z])in\.?$/.test(lower.slice(0, end));
  const said = text.slice(Math.max(0, end - 12), end);
  if (/\dV$/.test(said)) return true;
  if (ONE_LETTER.test(said) || SMALL_LETTER.test(said)) return false;
  const value = statement.nominal ?? statement.low?.amount ?? statement.high?.amount;
  if (value?.unit !== 'in' || value.style !== 'integer') return true;
  if (/["”″]$/.test(value.text)) {
    // One line's worth either side: a whole file of inch marks must not be counted for each.
    const before = lower.slice(Math.max(0, end - LINE), end).match(/["“”]/g)?.length ?? 0;
    return before % 2 === 1 && !/["”]/.test(lower.slice(end, end + LINE));
  }
  return !/ in$/i.test(value.text) || AFTER_INCH.test(lower.slice(end));
}
