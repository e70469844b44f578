import Fraction from 'fraction.js';
import type { Rational } from './model.ts';

/**
 * An exact number from a decimal numeral (`.203`, `-1.5`), a whole number or a ratio of whole
 * numbers: `rational('0.203')`, `rational(13, 64)`.
 * Fails with a RangeError where the denominator is zero or the numeral is not a decimal.
 */
export function rational(value: string | number | bigint, denominator?: number | bigint): Rational {
  if (typeof value === 'string') {
    const parts = /^([+-]?)(\d*)(?:\.(\d*))?$/.exec(value);
    if (!parts || (!parts[2] && !parts[3])) throw new RangeError(`not a decimal numeral: ${value}`);
    const decimals = parts[3] ?? '';
    const digits = BigInt(`${parts[2] || '0'}${decimals}`);
    return new Fraction(parts[1] === '-' ? -digits : digits, 10n ** BigInt(decimals.length));
  }
  if (denominator === undefined) return new Fraction(value);
  if (BigInt(denominator) === 0n) throw new RangeError('a ratio needs a denominator other than 0');
  return new Fraction(value, denominator);
}

/** The number 0, made once. */
export const ZERO: Rational = rational(0);
/** The number 1, made once. */
export const ONE: Rational = rational(1);

/**
 * How a number is brought to fewer places. `nearest` takes ties away from zero, `even` to the even
 * digit (ASTM E29 section 6.4, from memory); `up` and `down` go toward plus and minus infinity;
 * `chop` drops the digits.
 */
export type RoundingMode = 'nearest' | 'even' | 'up' | 'down' | 'chop';

/** Rounds to a number of decimal places in one step (never in stages); exact result. */
export function roundTo(value: Rational, places: number, mode: RoundingMode = 'nearest'): Rational {
  const scale = 10n ** BigInt(places);
  return new Fraction(scaledInteger(value, scale, mode), scale);
}

function scaledInteger(value: Rational, scale: bigint, mode: RoundingMode): bigint {
  const numerator = value.s * value.n * scale;
  const truncated = numerator / value.d;
  const remainder = numerator - truncated * value.d;
  if (remainder === 0n) return truncated;
  const awayFromZero = numerator < 0n ? truncated - 1n : truncated + 1n;
  if (mode === 'chop') return truncated;
  if (mode === 'up') return numerator < 0n ? truncated : awayFromZero;
  if (mode === 'down') return numerator < 0n ? awayFromZero : truncated;
  const twice = (remainder < 0n ? -remainder : remainder) * 2n;
  if (twice !== value.d) return twice > value.d ? awayFromZero : truncated;
  if (mode === 'nearest') return awayFromZero;
  return truncated % 2n === 0n ? truncated : awayFromZero;
}

/**
 * Writes a number with exactly so many decimal places: `formatDecimal(13/64, 3)` is `0.203`.
 * Negative numbers take a hyphen-minus; a zero is never negative.
 */
export function formatDecimal(
  value: Rational,
  places: number,
  mode: RoundingMode = 'nearest',
): string {
  const scaled = scaledInteger(value, 10n ** BigInt(places), mode);
  const digits = (scaled < 0n ? -scaled : scaled).toString().padStart(places + 1, '0');
  const whole = digits.slice(0, digits.length - places);
  const sign = scaled < 0n ? '-' : '';
  return places === 0 ? `${sign}${whole}` : `${sign}${whole}.${digits.slice(-places)}`;
}

/** How many decimal places write the number exactly; null where none do (1/3). */
export function exactPlaces(value: Rational): number | null {
  let rest = value.d;
  let twos = 0;
  let fives = 0;
  while (rest % 2n === 0n) {
    rest /= 2n;
    twos++;
  }
  while (rest % 5n === 0n) {
    rest /= 5n;
    fives++;
  }
  return rest === 1n ? Math.max(twos, fives) : null;
}

/** The number exactly: a decimal where one ends within 12 places (`0.203125`), else `n/d`. */
export function exactText(value: Rational): string {
  const places = exactPlaces(value);
  if (places !== null && places <= 12) return formatDecimal(value, places);
  return `${value.s < 0n ? '-' : ''}${value.n}/${value.d}`;
}

/** The smaller of two numbers. */
export function lesser(a: Rational, b: Rational): Rational {
  return a.compare(b) <= 0 ? a : b;
}

/** The greater of two numbers. */
export function greater(a: Rational, b: Rational): Rational {
  return a.compare(b) >= 0 ? a : b;
}
