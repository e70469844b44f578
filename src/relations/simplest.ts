import { rational } from '../quantity/index.ts';
import type { Rational } from '../quantity/model.ts';
import type { Interval } from './model.ts';

const doubles = new Float64Array(1);
const bits = new BigUint64Array(doubles.buffer);

/** A finite double as the exact number that it is. Fails with a RangeError for one that is not finite. */
export function exactly(value: number): Rational {
  if (!Number.isFinite(value)) throw new RangeError(`${value} is no number`);
  if (Number.isInteger(value)) return rational(BigInt(value));
  doubles[0] = value;
  const raw = bits[0] ?? 0n;
  const biased = Number((raw >> 52n) & 0x7ffn);
  const fraction = raw & 0xf_ffff_ffff_ffffn;
  const mantissa = biased === 0 ? fraction : fraction | 0x10_0000_0000_0000n;
  // Not whole, so the exponent of the last bit is below zero.
  const shift = BigInt(1075 - Math.max(biased, 1));
  return rational(value < 0 ? -mantissa : mantissa, 1n << shift);
}

/**
 * The number with the smallest denominator inside a stretch: of what doubles leave of 28 it makes 28
 * again, and 127/130 of what they leave of that.
 */
export function simplestIn({ lo, hi }: Interval): Rational {
  if (lo <= 0 && hi >= 0) return rational(0);
  return lo > 0 ? simplest(exactly(lo), exactly(hi)) : simplest(exactly(-hi), exactly(-lo)).neg();
}

/** Steps of a continued fraction that two doubles can share at most. */
const STEPS = 80;

function simplest(low: Rational, high: Rational): Rational {
  const whole: bigint[] = [];
  let [a, b] = [low, high];
  let last = a;
  for (let step = 0; step < STEPS; step++) {
    const floor = a.n / a.d;
    const rest = a.sub(floor);
    if (rest.n === 0n) {
      last = a;
      break;
    }
    if (floor < b.n / b.d) {
      last = rational(floor + 1n);
      break;
    }
    whole.push(floor);
    [a, b] = [b.sub(floor).inverse(), rest.inverse()];
    last = a;
  }
  return whole.reduceRight((value, floor) => value.inverse().add(floor), last);
}
