import type { Rational } from '../quantity/model.ts';
import type { Limits } from './model.ts';

/**
 * The complementary error function for x of 0 or more, to about 1e-14 of itself: the power series
 * of erf below 2 (Abramowitz and Stegun 7.1.6), the continued fraction of erfc above (7.1.14); both
 * numbers from memory.
 */
function erfcOf(x: number): number {
  if (x < 2) {
    let term = x;
    let sum = x;
    for (let n = 1; n < 100 && term > sum * 1e-17; n++) {
      term *= (2 * x * x) / (2 * n + 1);
      sum += term;
    }
    return 1 - (2 / Math.sqrt(Math.PI)) * Math.exp(-x * x) * sum;
  }
  // Beyond 27 the result is less than the smallest double.
  if (x > 27) return 0;
  let tail = x;
  for (let n = 120; n >= 1; n--) tail = x + n / 2 / tail;
  return Math.exp(-x * x) / (Math.sqrt(Math.PI) * tail);
}

/** The part of a standard normal distribution that lies above z. */
export function above(z: number): number {
  return z < 0 ? 1 - erfcOf(-z / Math.SQRT2) / 2 : erfcOf(z / Math.SQRT2) / 2;
}

/**
 * The probability that the true size lies inside the limits, taken as normally distributed about
 * the reading with the standard uncertainty U/2 (JCGM 106:2012, conformance probability). From 0 to
 * 1; without any uncertainty exactly one of the two. All in one unit.
 */
export function probabilityInside(
  reading: Rational,
  uncertainty: Rational,
  limits: Limits,
): number {
  if (uncertainty.n === 0n) {
    const under = limits.low !== null && reading.compare(limits.low) < 0;
    const over = limits.high !== null && reading.compare(limits.high) > 0;
    return under || over ? 0 : 1;
  }
  const standard = uncertainty.div(2);
  const z = (limit: Rational) => limit.sub(reading).div(standard).valueOf();
  const tooLow = limits.low === null ? 0 : above(-z(limits.low));
  const tooHigh = limits.high === null ? 0 : above(z(limits.high));
  return Math.max(0, 1 - tooLow - tooHigh);
}
