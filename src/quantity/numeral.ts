import { VULGAR } from './lexicon.ts';
import type { Rational } from './model.ts';
import { numberWordsAt } from './number-words.ts';
import { rational, ZERO } from './rational.ts';
import type { UnitOfMeasure } from './units.ts';

/** A number as it stands in a text, before its unit is known. */
export interface Numeral {
  readonly start: number;
  readonly end: number;
  readonly style: 'decimal' | 'integer' | 'fraction' | 'mixed';
  /** Exact; with a decimal comma read as a point. */
  readonly value: Rational;
  /** Decimal places written; 0 for a whole number, null for a fraction. */
  readonly places: number | null;
  /** Numerator and denominator of the fraction as written, not reduced; null elsewhere. */
  readonly ratio: readonly [bigint, bigint] | null;
  /** The digits with their comma, where there is one: its meaning hangs on the unit. */
  readonly comma: string | null;
}

/** What is wrong with a numeral that has the right shape. */
export interface NumeralFault {
  readonly code: 'zero-denominator' | 'too-long' | 'improper';
  readonly start: number;
  readonly end: number;
}

/** Longer numbers are no size of anything, and exact arithmetic on them would cost real time. */
const MAX_DIGITS = 12;

const SHAPE = /(\d+)(?:([ -]{1,3})(?=\d+\/\d|[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒]))?|[.](?=\d)/y;
/** `1/1.5` and `1/1-1/2` are two figures; `1/16th` is one. */
const FRACTION = /(\d+)\/(\d+)(?![\d]|[.,]\d)(?:(?:th|nd|rd|st)s?(?![\p{L}\p{N}]))?/uy;
/** `1 and 7/16`, `1 & 1/2`. */
const AND_AHEAD = /^\d{1,3} [a&]/;
const AND_FRACTION = /(\d+) (?:and|&) (?=\d+\/\d|[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒])/y;
const DECIMALS = /[.](\d+)/y;
const COMMA = /(?:,\d+)+(?:[.]\d+)?/y;

function matchAt(pattern: RegExp, text: string, at: number): RegExpExecArray | null {
  pattern.lastIndex = at;
  return pattern.exec(text);
}

/**
 * Reads a number at an offset of a normalized text: `13/64`, `1-7/16`, `1 7/16`, `1½`, `.203`,
 * `0.203`, `5,16`, `475`, `three-quarters of a`. Null where no number starts; a fault for a zero denominator or a number
 * of more than 12 digits.
 */
export function numeralAt(text: string, at: number): Numeral | NumeralFault | null {
  const code = text.charCodeAt(at);
  if (code >= 97 && code <= 122) return wordedNumeral(text, at);
  const vulgar = VULGAR.get(text.charAt(at));
  if (vulgar) return ratioNumeral(at, at + 1, ZERO, BigInt(vulgar[0]), BigInt(vulgar[1]), false);

  const plain = matchAt(FRACTION, text, at);
  if (plain && !isWholeBesideMixed(plain, text)) {
    const [numerator, denominator] = [plain[1] ?? '', plain[2] ?? ''];
    return checkedRatio(at, FRACTION.lastIndex, '', numerator, denominator);
  }
  const and = AND_AHEAD.test(text.slice(at, at + 9)) ? matchAt(AND_FRACTION, text, at) : null;
  if (and) {
    const mixed = mixedNumeral(text, at, and[1] ?? '', AND_FRACTION.lastIndex, ' ');
    if (mixed) return mixed;
  }
  const head = matchAt(SHAPE, text, at);
  if (!head) return null;
  if (head[1] === undefined) {
    const digits = matchAt(DECIMALS, text, at);
    return digits ? decimalNumeral(text, at, DECIMALS.lastIndex, digits[1]?.length ?? 0) : null;
  }
  const whole = head[1];
  if (head[2] !== undefined) {
    const mixed = mixedNumeral(text, at, whole, SHAPE.lastIndex, head[2]);
    if (mixed) return mixed;
  }
  const afterWhole = at + whole.length;
  const sign = VULGAR.get(text.charAt(afterWhole));
  if (sign)
    return ratioNumeral(
      at,
      afterWhole + 1,
      rational(whole),
      BigInt(sign[0]),
      BigInt(sign[1]),
      true,
    );
  const point = matchAt(DECIMALS, text, afterWhole);
  if (point) return decimalNumeral(text, at, DECIMALS.lastIndex, point[1]?.length ?? 0);
  const comma = matchAt(COMMA, text, afterWhole);
  if (comma) return commaNumeral(text, at, COMMA.lastIndex, `${whole}${comma[0]}`);
  return decimalNumeral(text, at, afterWhole, 0);
}

/** The `1/1` of `1/1-1/2 turns`: one, and one and a half. */
function isWholeBesideMixed([, over = '', under = '']: RegExpExecArray, text: string): boolean {
  return Number(over) >= Number(under) && /^[- ]\d{1,4}\/\d/.test(text.slice(FRACTION.lastIndex));
}

function wordedNumeral(text: string, at: number): Numeral | null {
  const words = numberWordsAt(text, at);
  if (!words) return null;
  const { end, denominator } = words;
  const whole = rational(words.whole);
  if (denominator === 1) {
    return { start: at, end, style: 'integer', value: whole, places: 0, ratio: null, comma: null };
  }
  const [n, d] = [BigInt(words.numerator), BigInt(denominator)];
  return ratioNumeral(at, end, whole, n, d, words.whole > 0);
}

/** Whether a numeral was found to be faulty. */
export function isFault(numeral: Numeral | NumeralFault): numeral is NumeralFault {
  return 'code' in numeral;
}

/** `1-7/16`, `1 7/16`, `1-½`; null where no fraction follows the whole number. */
function mixedNumeral(
  text: string,
  at: number,
  whole: string,
  fractionAt: number,
  joint: string,
): Numeral | NumeralFault | null {
  // `1 - 1/2` with spaces around the dash is a range; so is a dash with a space on one side.
  if (joint !== '-' && joint !== ' ') return null;
  const sign = VULGAR.get(text.charAt(fractionAt));
  if (sign) {
    return ratioNumeral(
      at,
      fractionAt + 1,
      rational(whole),
      BigInt(sign[0]),
      BigInt(sign[1]),
      true,
    );
  }
  const fraction = matchAt(FRACTION, text, fractionAt);
  if (!fraction) return null;
  const end = FRACTION.lastIndex;
  const [numerator, denominator] = [fraction[1] ?? '', fraction[2] ?? ''];
  const long = Math.max(numerator.length, denominator.length) > MAX_DIGITS;
  const proper = !long && BigInt(numerator) < BigInt(denominator);
  if (proper || long || /^0+$/.test(denominator)) {
    return checkedRatio(at, end, whole, numerator, denominator);
  }
  // `1-5/4` is no mixed number, and nobody writes the range from 1 to 1-1/4 so.
  return { code: 'improper', start: at, end };
}

function checkedRatio(
  start: number,
  end: number,
  whole: string,
  numerator: string,
  denominator: string,
): Numeral | NumeralFault {
  if (
    whole.length > MAX_DIGITS ||
    numerator.length > MAX_DIGITS ||
    denominator.length > MAX_DIGITS
  ) {
    return { code: 'too-long', start, end };
  }
  if (BigInt(denominator) === 0n) return { code: 'zero-denominator', start, end };
  const base = whole === '' ? ZERO : rational(whole);
  return ratioNumeral(start, end, base, BigInt(numerator), BigInt(denominator), whole !== '');
}

function ratioNumeral(
  start: number,
  end: number,
  whole: Rational,
  n: bigint,
  d: bigint,
  mixed: boolean,
): Numeral {
  const value = whole.add(rational(n, d));
  return {
    start,
    end,
    style: mixed ? 'mixed' : 'fraction',
    value,
    places: null,
    ratio: [n, d],
    comma: null,
  };
}

function decimalNumeral(
  text: string,
  start: number,
  end: number,
  places: number,
): Numeral | NumeralFault {
  if (end - start > MAX_DIGITS + 1) return { code: 'too-long', start, end };
  const style = places === 0 ? 'integer' : 'decimal';
  return {
    start,
    end,
    style,
    value: rational(text.slice(start, end)),
    places,
    ratio: null,
    comma: null,
  };
}

function commaNumeral(
  text: string,
  start: number,
  end: number,
  written: string,
): Numeral | NumeralFault {
  if (end - start > MAX_DIGITS + 2) return { code: 'too-long', start, end };
  const single = /^\d+,\d+$/.test(written);
  const value = rational(single ? written.replace(',', '.') : written.replaceAll(',', ''));
  const places = single
    ? written.length - written.indexOf(',') - 1
    : (written.split('.')[1]?.length ?? 0);
  return {
    start,
    end,
    style: 'decimal',
    value,
    places,
    ratio: null,
    comma: text.slice(start, end),
  };
}

/**
 * Settles what a comma meant now that the unit is known: a decimal comma in metric units, a
 * thousands comma in `1,300 rpm`. Null where it could be either (`1,250 in`) or is neither.
 */
export function settleComma(numeral: Numeral, unit: UnitOfMeasure): Numeral | null {
  if (numeral.comma === null) return numeral;
  const grouped = /^[1-9]\d{0,2}(,\d{3})+(\.\d+)?$/.test(numeral.comma);
  const single = /^\d+,\d+$/.test(numeral.comma);
  if (single && (unit.metric || !grouped)) return numeral;
  if (!grouped || unit.dimension === 'length') return null;
  const digits = numeral.comma.replaceAll(',', '');
  const places = digits.split('.')[1]?.length ?? 0;
  return {
    ...numeral,
    value: rational(digits),
    places,
    style: places === 0 ? 'integer' : 'decimal',
  };
}
