import type { Rational } from '../quantity/model.ts';
import type { Interval } from './model.ts';

const doubles = new Float64Array(1);
const bits = new BigInt64Array(doubles.buffer);

/** The next double above a finite one. */
export function nextUp(value: number): number {
  if (value === 0) return Number.MIN_VALUE;
  doubles[0] = value;
  bits[0] = (bits[0] ?? 0n) + (value > 0 ? 1n : -1n);
  return doubles[0];
}

/** The next double below a finite one. */
export function nextDown(value: number): number {
  return -nextUp(-value);
}

/**
 * An interval between two numbers, in either order. Fails with a RangeError for a number that is
 * not finite: a relation says that it is out of range before it gets so far.
 */
export function interval(one: number, other: number = one): Interval {
  if (!Number.isFinite(one) || !Number.isFinite(other)) {
    throw new RangeError(`an interval cannot reach from ${one} to ${other}`);
  }
  return one <= other ? { lo: one, hi: other } : { lo: other, hi: one };
}

/** Whole numbers below this are doubles exactly. */
const EXACT = 2n ** 53n;
/** Steps between doubles that a quotient of two longer numbers may be off: each of them, and the division. */
const LONG_STEPS = 4;

/**
 * An interval of doubles that holds both exact numbers, `low` not above `high`: exact where they are
 * doubles themselves, else a step wider, and a few steps for numbers of more digits than doubles have.
 */
export function enclose(low: Rational, high: Rational = low): Interval {
  return { lo: stepped(low, nextDown), hi: stepped(high, nextUp) };
}

function stepped(number: Rational, step: (value: number) => number): number {
  const { n, d } = number;
  const isShort = n < EXACT && d < EXACT;
  let value = number.valueOf();
  if (isShort && (d & (d - 1n)) === 0n) return value;
  for (let i = isShort ? 1 : LONG_STEPS; i > 0; i--) value = step(value);
  return value;
}

/** Whether two intervals have a number in common; touching counts. */
export function meet(one: Interval, other: Interval): boolean {
  return one.lo <= other.hi && other.lo <= one.hi;
}

export function hull(one: Interval, other: Interval): Interval {
  return { lo: Math.min(one.lo, other.lo), hi: Math.max(one.hi, other.hi) };
}

export function add(one: Interval, other: Interval): Interval {
  return { lo: nextDown(one.lo + other.lo), hi: nextUp(one.hi + other.hi) };
}

export function subtract(one: Interval, other: Interval): Interval {
  return { lo: nextDown(one.lo - other.hi), hi: nextUp(one.hi - other.lo) };
}

export function multiply(one: Interval, other: Interval): Interval {
  const products = [
    one.lo * other.lo,
    one.lo * other.hi,
    one.hi * other.lo,
    one.hi * other.hi,
  ] as const;
  return { lo: nextDown(Math.min(...products)), hi: nextUp(Math.max(...products)) };
}

/** Fails with a RangeError where the divisor could be zero. */
export function divide(one: Interval, by: Interval): Interval {
  if (by.lo <= 0 && by.hi >= 0) throw new RangeError('division by an interval that holds zero');
  const quotients = [one.lo / by.lo, one.lo / by.hi, one.hi / by.lo, one.hi / by.hi] as const;
  return { lo: nextDown(Math.min(...quotients)), hi: nextUp(Math.max(...quotients)) };
}

/** How many units in the last place a library function, or a formula of a few of them, may be off. */
const SLACK = 64;

function widen(low: number, high: number, scale: number): Interval {
  const slack = SLACK * Number.EPSILON * Math.max(Math.abs(low), Math.abs(high), scale);
  return { lo: low - slack, hi: high + slack };
}

/**
 * The interval of a function that rises or falls in each of its arguments throughout: worked at
 * the two corners that are its least and its greatest, then widened by what double arithmetic may
 * be off. `rising` tells for each argument whether the function rises (1) or falls (-1) in it;
 * `scale` is the size of the largest number met on the way, where the formula subtracts such ones.
 * Fails with a RangeError where a corner is outside of what the function can work.
 */
export function monotone(
  inputs: readonly Interval[],
  rising: readonly (1 | -1)[],
  work: (...values: number[]) => number,
  scale = 0,
): Interval {
  const corner = (up: boolean) =>
    work(...inputs.map((input, i) => (up === (rising[i] === 1) ? input.hi : input.lo)));
  const low = corner(false);
  const high = corner(true);
  if (Number.isNaN(low) || Number.isNaN(high)) {
    throw new RangeError('a formula was asked for figures outside of its range');
  }
  return widen(Math.min(low, high), Math.max(low, high), scale);
}

/** A stretch cut off below zero, whose upper end is not: what there is of it, and never less than nothing. */
export function fromNothing({ lo, hi }: Interval): Interval {
  return { lo: Math.max(0, lo), hi };
}
