import { withSystem } from './gauge-terms.ts';
import {
  ABOUT_WORDS,
  MAX_PREFIXES,
  MAX_SUFFIXES,
  MIN_PREFIXES,
  MIN_SUFFIXES,
  SENSES,
} from './lexicon.ts';
import type { Sense, SizeProblem } from './model.ts';
import { problem } from './problems.ts';
import {
  byFirstLetter,
  type NotationContext,
  type PhraseList,
  phraseAt,
  skipSpaces,
  type Term,
} from './term.ts';
import { termAt } from './terms.ts';
import { type Tolerance, toleranceAt } from './tolerance.ts';
import { sameFamily, type UnitOfMeasure } from './units.ts';

/*
 * The grammar of sizes, in one place (normalized text; spaces are free between parts):
 *
 *   size       = [about] [sense] ( oneSided | between | term tail ) [sense] [per-barrel words]
 *   oneSided   = ("at least" | "min" | "not over" | "max" ...) term
 *   between    = "between" term ("and" | "&") term | "from" term range
 *   tail       = tolerance | range | limit | nothing
 *   tolerance  = ("±" | "+/-" | "+-" | "plus or minus") number [unit]
 *              | sign number [unit] ["/" | ","] sign number [unit]        one sign +, one -
 *   range      = ("-" | "to" | "/" | "..") term                           "/" only after a decimal
 *   limit      = "min" | "max" | "or more" | "or less" ...
 *   term       = number [unit] [gauge word] | gauge name
 *   number     = whole | decimal | fraction | mixed        (numeral.ts)
 *   gauge name = "No. 29 drill" | "drill E" | "22 SWG" ... (terms.ts)
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
  const rough = anyPhrase(lower, at, about);
  if (rough !== null) at = skipSpaces(lower, rough);
  const before = senseAt(lower, at);
  if (before) at = skipSpaces(lower, before.end);

  let limit: 'min' | 'max' | null = null;
  const low = anyPhrase(lower, at, minBefore);
  const high = low === null ? anyPhrase(lower, at, maxBefore) : null;
  if (low !== null || high !== null) {
    limit = low !== null ? 'min' : 'max';
    at = skipSpaces(lower, low ?? high ?? at);
  }
  const between =
    limit === null && phraseAt(lower, at, 'between') ? skipSpaces(lower, at + 7) : null;
  const from = limit === null && phraseAt(lower, at, 'from') ? skipSpaces(lower, at + 4) : null;
  const first = termAt(lower, between ?? from ?? at, context);
  if (!first || 'problem' in first) return first;
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
  return sensed;
}

function fault(lower: string, message: string, start: number, end: number): PartsResult {
  return {
    problem: problem('unreadable', `${lower.slice(start, end)}: ${message}`, null, start, end),
  };
}

function senseAt(lower: string, at: number): { sense: Sense; end: number } | null {
  const first = lower.charCodeAt(at);
  // Every sense starts with one of a, b, d, i, l, o, r, u: most texts are settled by one look.
  if (!(first >= 97 && first <= 117)) return null;
  for (const [word, sense] of SENSES)
    if (phraseAt(lower, at, word)) return { sense, end: at + word.length };
  return null;
}

/** Limit words and the sense after the numbers. */
function finish(parts: Omit<Parts, 'end'>, lower: string, end: number): Parts {
  let at = end;
  let { limit, sense } = parts;
  const unit = parts.first.unit ?? parts.second?.unit ?? parts.plus?.unit ?? parts.minus?.unit;
  const dimension = unit?.dimension;
  for (let again = true; again; ) {
    again = false;
    const next = skipSpaces(lower, lower.charAt(at) === ',' ? at + 1 : at);
    const counted = dimension === 'turns' || dimension === 'notches' || dimension === 'angle';
    const after = sense === null && counted ? senseAt(lower, next) : null;
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
  return { ...parts, limit, sense, end: at };
}

/** Where the second end of a range starts, if a range goes on after the first. */
function rangeStart(lower: string, first: Term): number | null {
  const at = skipSpaces(lower, first.end);
  if (lower.charAt(at) === '-') return skipSpaces(lower, at + 1);
  if (lower.startsWith('..', at))
    return skipSpaces(lower, at + (lower.charAt(at + 2) === '.' ? 3 : 2));
  for (const word of ['to', 'through', 'thru']) {
    if (phraseAt(lower, at, word)) return skipSpaces(lower, at + word.length);
  }
  // `.018/.022 in`: after a decimal a slash parts two ends; after a whole number it would be a fraction.
  const decimal = first.numeral?.style === 'decimal' && first.unit === null;
  return decimal && lower.charAt(at) === '/' ? skipSpaces(lower, at + 1) : null;
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
  if (slashed && 'numeral' in second && second.numeral?.style !== 'decimal') return null;
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
