import { withSystem } from './gauge-terms.ts';
import {
  ABOUT_WORDS,
  MAX_PREFIXES,
  MAX_SUFFIXES,
  MIN_PREFIXES,
  MIN_SUFFIXES,
  SCREW_SENSES,
  SCREW_VERBS,
  SENSES,
} from './lexicon.ts';
import type { Sense, SizeProblem } from './model.ts';
import { problem } from './problems.ts';
import { slashedPair } from './slashed-pair.ts';
import { Spellings } from './spelling.ts';
import {
  byFirstLetter,
  type NotationContext,
  type PhraseList,
  phraseAt,
  skipSpaces,
  stick,
  type Term,
} from './term.ts';
import { termAt } from './terms.ts';
import { type Tolerance, toleranceAt } from './tolerance.ts';
import { sameFamily, type UnitOfMeasure } from './units.ts';
import { wholeUnitAt } from './whole-unit.ts';

/*
 * The grammar of sizes, in one place (normalized text; spaces are free between parts):
 *
 *   size       = [about] [sense] ( oneSided | between | pair | term tail ) [near] [sense] [per-barrel words]
 *   oneSided   = ("at least" | "min" | "not over" | "max" ...) term
 *   between    = "between" term ("and" | "&") term | "from" term range
 *   pair       = whole "/" whole unit                      where that is no fraction (slashed-pair.ts)
 *   tail       = tolerance | band | range | limit [other limit] | nothing
 *   band       = "(" range ")"                             limits behind a nominal
 *   tolerance  = ("±" | "+/-" | "+-" | "plus or minus") number [unit]
 *              | sign number [unit] ["/" | ","] sign number [unit]        one sign +, one -
 *   range      = ("-" | "to" | "/" | "..") term            "/" only between figures of one unit
 *   limit      = "min" | "max" | "or more" | "or less" ...
 *   term       = number [unit] [gauge word] | gauge name
 *   number     = whole | decimal | fraction | mixed        (numeral.ts)
 *   gauge name = "No. 29 drill" | "drill E" | "22 SWG" ... (terms.ts)
 *   near       = "bare" | "full"
 *   about      = "about" | "~" ...      sense = "out" | "in" | "rich" | "BTDC" ...
 */

/** The parts of a size as the grammar found them; `statement.ts` makes a Statement of them. */
export interface Parts {
  readonly start: number;
  readonly end: number;
  readonly about: boolean;
  readonly sense: Sense | null;
  readonly first: Term;
  readonly second: Term | null;
  readonly plus: Tolerance | null;
  readonly minus: Tolerance | null;
  readonly limit: 'min' | 'max' | null;
  /** The two limits in parentheses behind a nominal: `13/64 in (.188–.218 in)`. */
  readonly band?: { readonly low: Term; readonly high: Term } | null;
}

/** A size's parts, what is wrong with them, or null where no size starts. */
export type PartsResult = Parts | { readonly problem: SizeProblem } | null;

const about = byFirstLetter(ABOUT_WORDS);
const minBefore = byFirstLetter(MIN_PREFIXES);
const maxBefore = byFirstLetter(MAX_PREFIXES);
const minAfter = byFirstLetter(MIN_SUFFIXES);
const maxAfter = byFirstLetter(MAX_SUFFIXES);

/** The offset after whichever phrase stands at an offset; null where none does. */
function anyPhrase(lower: string, at: number, phrases: PhraseList): number | null {
  for (const phrase of phrases.get(lower.charCodeAt(at)) ?? []) {
    if (phraseAt(lower, at, phrase)) return at + phrase.length;
  }
  return null;
}

/**
 * Reads one size at an offset of a normalized text, as far as it goes. Null where no size starts
 * there.
 */
export function partsAt(lower: string, start: number, context: NotationContext): PartsResult {
  let at = start;
  const worded = lower.charCodeAt(at) >= 97;
  const rough = anyPhrase(lower, at, about) ?? (worded ? nearAt(lower, at) : null);
  if (rough !== null) at = skipSpaces(lower, rough);
  if (worded) at = pastArticle(lower, at);
  let told = limitBefore(lower, at);
  if (told) at = told.end;
  const before = senseAt(lower, at, BEFORE);
  if (before) at = skipSpaces(lower, before.end);
  told ??= before && limitBefore(lower, at);
  if (told) at = Math.max(at, told.end);
  const limit = told?.limit ?? null;
  const between =
    limit === null && phraseAt(lower, at, 'between') ? skipSpaces(lower, at + 7) : null;
  const from = limit === null && phraseAt(lower, at, 'from') ? skipSpaces(lower, at + 4) : null;
  const whole = termAt(lower, between ?? from ?? at, context);
  if (!whole || 'problem' in whole) return whole;
  const pair = slashedPair(lower, whole);
  if (pair && 'problem' in pair) return pair;
  if (pair && limit === null && between === null && from === null) {
    const empty = { plus: null, minus: null, limit: null, sense: before?.sense ?? null };
    return finish({ start, about: rough !== null, ...pair, ...empty }, lower, whole.end);
  }
  const first = whole;
  const head = { start, about: rough !== null, first };

  if (between !== null) {
    const and = skipSpaces(lower, first.end);
    const joint = ['and', '&', 'to'].find((word) => phraseAt(lower, and, word));
    if (joint === undefined)
      return fault(lower, 'between needs a second size after `and`', start, first.end);
    return withRange(
      { ...head, sense: before?.sense ?? null },
      lower,
      skipSpaces(lower, and + joint.length),
      context,
    );
  }
  const tolerance = limit === null && from === null ? toleranceAt(lower, first) : null;
  if (tolerance && 'problem' in tolerance) return tolerance;
  if (tolerance) {
    return finish(
      { ...head, sense: before?.sense ?? null, second: null, limit: null, ...tolerance.parts },
      lower,
      tolerance.end,
    );
  }
  const band = limit === null && from === null ? bandAt(lower, first, context) : null;
  if (band) {
    const alone = { second: null, plus: null, minus: null, limit: null, band };
    return finish({ ...head, sense: before?.sense ?? null, ...alone }, lower, band.end);
  }
  const rangeAt = limit === null ? rangeStart(lower, first) : null;
  if (rangeAt !== null) {
    const ranged = withRange({ ...head, sense: before?.sense ?? null }, lower, rangeAt, context);
    if (ranged) return ranged;
  }
  if (from !== null) return null;
  const sensed = finish(
    { ...head, sense: before?.sense ?? null, second: null, plus: null, minus: null, limit },
    lower,
    first.end,
  );
  return otherLimit(sensed, lower, context) ?? sensed;
}

/** `bare 1/32 in`, `a full 1/32"`: a little under or over. */
const NEAR_BEFORE = /(?:an? )?(?:bare|barely|full|scant)(?= [\d.½¼¾⅛⅜⅝⅞])/y;
const NEAR_AFTER = / ?(?:\((?:bare|full|scant)\)|(?:bare|full|scant)(?=$|[ ,;.)]?$|[,;)]))/y;

function nearAt(lower: string, at: number): number | null {
  return stick(NEAR_BEFORE, lower, at) ? NEAR_BEFORE.lastIndex : null;
}

const ARTICLE = /(?:an?|the) (?=(?:nos?\.?|number|letter|#|№|\d|\.\d|[a-z] drill))/y;

/** `a No. 29 drill`: an article before a figure or a gauge says nothing. */
function pastArticle(lower: string, at: number): number {
  return stick(ARTICLE, lower, at) ? ARTICLE.lastIndex : at;
}

function limitBefore(lower: string, at: number): { limit: 'min' | 'max'; end: number } | null {
  const low = anyPhrase(lower, at, minBefore);
  const high = low === null ? anyPhrase(lower, at, maxBefore) : null;
  if (low === null && high === null) return null;
  return { limit: low !== null ? 'min' : 'max', end: skipSpaces(lower, low ?? high ?? at) };
}

const BETWEEN_LIMITS = /[ ,;]*(?:(?:to|and|but|-|\/) ?)?/y;

/**
 * `.018 in. min., .022 in. max.`, `not less than .018 nor more than .022 in.`: the other limit behind
 * a limit. Null where none follows.
 */
function otherLimit(parts: Parts, lower: string, context: NotationContext): Parts | null {
  if (parts.limit === null || parts.second || parts.plus) return null;
  if (!stick(BETWEEN_LIMITS, lower, parts.end)) return null;
  const start = BETWEEN_LIMITS.lastIndex;
  if (start === parts.end) return null;
  const told = limitBefore(lower, start);
  const term = termAt(lower, told?.end ?? start, context);
  if (!term || 'problem' in term) return null;
  const one = { start, about: false, first: term, second: null, plus: null, minus: null };
  const other = finish({ ...one, sense: parts.sense, limit: told?.limit ?? null }, lower, term.end);
  if (other.limit === null || other.limit === parts.limit) return null;
  const [low, high] = parts.limit === 'min' ? [parts.first, term] : [term, parts.first];
  // `.018 min - .022 max in.`: the one unit of both may stand behind the last word.
  const unit = low.unit ?? high.unit ?? low.gauge ?? high.gauge;
  const behind = unit ? null : wholeUnitAt(lower, skipSpaces(lower, other.end));
  const second = behind ? { ...high, unit: behind.unit, reference: behind.reference } : high;
  const end = behind?.end ?? other.end;
  return { ...parts, first: low, second, limit: null, sense: other.sense, end };
}

function fault(lower: string, message: string, start: number, end: number): PartsResult {
  return {
    problem: problem('unreadable', `${lower.slice(start, end)}: ${message}`, null, start, end),
  };
}

const BEFORE = new Spellings([...SCREW_VERBS, ...SENSES]);
const BEHIND = new Spellings(SENSES);
const TURNED = new Spellings([...SENSES, ...SCREW_SENSES]);

function senseAt(
  lower: string,
  at: number,
  words: Spellings<Sense>,
): { sense: Sense; end: number } | null {
  const found = words.longest(lower, at);
  return found && { sense: found.value, end: found.end };
}

/** Limit words and the sense after the numbers. */
function finish(parts: Omit<Parts, 'end'>, lower: string, end: number): Parts {
  let at = end;
  let { limit, sense, about: rough } = parts;
  if (
    parts.first.unit?.dimension === 'length' &&
    /[ (bfs]/.test(lower.charAt(at)) &&
    stick(NEAR_AFTER, lower, at)
  ) {
    rough = true;
    at = NEAR_AFTER.lastIndex;
  }
  const unit = parts.first.unit ?? parts.second?.unit ?? parts.plus?.unit ?? parts.minus?.unit;
  const dimension = unit?.dimension;
  for (let again = true; again; ) {
    again = false;
    const next = skipSpaces(lower, lower.charAt(at) === ',' ? at + 1 : at);
    const counted = dimension === 'turns' || dimension === 'notches' || dimension === 'angle';
    const words = dimension === 'turns' ? TURNED : BEHIND;
    const after = sense === null && counted ? senseAt(lower, next, words) : null;
    if (after) {
      sense = after.sense;
      at = after.end;
      again = true;
    }
    if (limit !== null || parts.second || parts.plus) continue;
    const open = lower.charAt(next) === '(' ? next + 1 : next;
    const low = anyPhrase(lower, open, minAfter);
    const high = low === null ? anyPhrase(lower, open, maxAfter) : null;
    if (low !== null || high !== null) {
      limit = low !== null ? 'min' : 'max';
      at = low ?? high ?? at;
      if (open !== next && lower.charAt(at) === ')') at++;
      again = true;
    }
  }
  return { ...parts, about: rough, limit, sense, end: at };
}

/** Limits in parentheses behind a nominal that has its unit; null where none stand there. */
function bandAt(
  lower: string,
  first: Term,
  context: NotationContext,
): { low: Term; high: Term; end: number } | null {
  const open = skipSpaces(lower, first.end);
  if (lower.charAt(open) !== '(' || !(first.unit ?? first.gauge)) return null;
  const low = termAt(lower, skipSpaces(lower, open + 1), context);
  if (!low || 'problem' in low || !low.numeral) return null;
  const at = rangeStart(lower, low);
  const high = at === null ? null : termAt(lower, at, context);
  if (!high || 'problem' in high || !high.numeral) return null;
  const close = skipSpaces(lower, high.end);
  return lower.charAt(close) === ')' ? { low, high, end: close + 1 } : null;
}

/** Where the second end of a range starts, if a range goes on after the first. */
function rangeStart(lower: string, first: Term): number | null {
  const at = skipSpaces(lower, first.end);
  if (lower.charAt(at) === '-') return skipSpaces(lower, at + 1);
  if (lower.startsWith('..', at))
    return skipSpaces(lower, at + (lower.charAt(at + 2) === '.' ? 3 : 2));
  for (const word of ['to', 'through', 'thru', 'à', 'bis']) {
    if (phraseAt(lower, at, word)) return skipSpaces(lower, at + word.length);
  }
  // `.018/.022 in`, `10°/12°`: a slash that is no fraction's parts two ends.
  return lower.charAt(at) === '/' && first.numeral ? skipSpaces(lower, at + 1) : null;
}

type RangeHead = Pick<Parts, 'start' | 'about' | 'sense' | 'first'>;

function withRange(
  head: RangeHead,
  lower: string,
  at: number,
  context: NotationContext,
): PartsResult {
  const second = termAt(lower, at, context);
  if (!second) return null;
  const slashed = lower.charAt(skipSpaces(lower, head.first.end)) === '/';
  if (slashed && ('problem' in second || !second.numeral || !sameUnit(head.first, second)))
    return null;
  if ('problem' in second) return second;
  const named = second.gauge ? withSystem(head.first, second.gauge, context) : head.first;
  if (!named || 'problem' in named) return named;
  const first = named;
  return finish(
    { ...head, first, second, plus: null, minus: null, limit: null },
    lower,
    second.end,
  );
}

/** `.020"/.5 mm` is one size told twice, and no pair of limits. */
function sameUnit(first: Term, second: Term): boolean {
  return first.unit === null || second.unit === null || first.unit.id === second.unit.id;
}

/** Whether any part of a size has a unit or names a gauge: without one it is a bare number. */
export function hasUnit({ first, second, plus, minus }: Parts): boolean {
  const terms = [first, second].some((term) => term?.unit ?? term?.gauge);
  return terms || [plus, minus].some((tolerance) => tolerance?.unit);
}

/** Whether the units of a size's parts measure one thing. */
export function oneFamily(units: readonly UnitOfMeasure[]): boolean {
  const first = units[0];
  return units.every((unit) => first !== undefined && sameFamily(unit.dimension, first.dimension));
}
