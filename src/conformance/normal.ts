import { errorFunction } from 'simple-statistics';
import type { Rational } from '../quantity/model.ts';
import type { Limits } from './model.ts';

/**
 * The part of a standard normal distribution that lies above z, to 1e-7 (the library's error function is
 * right to 1.2e-7). What is made of it is told to four places of a probability at most; where rounding and
 * gauge are taken together the errors of its two tails stand against one another, and it stays below 1e-7.
 */
export function above(z: number): number {
  return (1 - errorFunction(z / Math.SQRT2)) / 2;
}

/** What a reading may be off by: the gauge, normally distributed, and its own rounding, a rectangle. */
export interface Spread {
  /** Expanded (k = 2), in the unit of the reading. */
  readonly gauge: Rational;
  /** Half of the last place that the reading is written to; zero where nothing was rounded. */
  readonly half: Rational;
}

/**
 * The probability that the true size lies inside the limits (JCGM 106:2012, 7, conformance probability),
 * from the distribution of reading and rounding together: the gauge's is normal with the standard
 * uncertainty U/2, the rounding's a rectangle (JCGM 101:2008, 6.4.2), and the two are independent. From
 * 0 to 1; without any uncertainty exactly one of the two. All in one unit.
 */
export function probabilityInside(
  reading: Rational,
  { gauge, half }: Spread,
  limits: Limits,
): number {
  if (gauge.n === 0n && half.n === 0n) {
    const under = limits.low !== null && reading.compare(limits.low) < 0;
    const over = limits.high !== null && reading.compare(limits.high) > 0;
    return under || over ? 0 : 1;
  }
  const [sigma, width] = [gauge.valueOf() / 2, half.valueOf()];
  const { low, high } = limits;
  const tooLow = low === null ? 0 : beyond(reading.sub(low).valueOf(), sigma, width);
  const tooHigh = high === null ? 0 : beyond(high.sub(reading).valueOf(), sigma, width);
  return Math.min(1, Math.max(0, 1 - tooLow - tooHigh));
}

/** The part of a normal distribution and a rectangle together that lies more than `distance` to one side. */
function beyond(distance: number, sigma: number, half: number): number {
  if (sigma === 0) return Math.min(1, Math.max(0, (half - distance) / (2 * half)));
  // Of a rectangle that is nothing beside the normal the spread is all that tells.
  if (half < sigma / 1000) return above(distance / Math.hypot(sigma, half / Math.sqrt(3)));
  const part = tailSum(distance - half, sigma) - tailSum(distance + half, sigma);
  return Math.min(1, Math.max(0, part / (2 * half)));
}

/** All of a normal distribution's tails from `from` up, added: the integral of its upper part. */
function tailSum(from: number, sigma: number): number {
  const z = from / sigma;
  const density = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
  return sigma * (density - z * above(z));
}
