import fc from 'fast-check';
import Fraction from 'fraction.js';
import { describe, expect, test } from 'vitest';
import { rational } from '../../src/quantity/index.ts';
import type { Rational } from '../../src/quantity/model.ts';
import {
  add,
  divide,
  enclose,
  hull,
  interval,
  meet,
  monotone,
  multiply,
  nextDown,
  nextUp,
  subtract,
} from '../../src/relations/interval.ts';
import type { Interval } from '../../src/relations/model.ts';
import { exactly, simplestIn } from '../../src/relations/simplest.ts';
import { runs } from '../suite/part.ts';

const finite = fc.double({ min: -1e9, max: 1e9, noNaN: true });
const stretch = fc.tuple(finite, finite).map(([one, other]) => interval(one, other));
/** A stretch with a number inside it. */
const inside = fc
  .tuple(stretch, fc.double({ min: 0, max: 1, noNaN: true }))
  .map(([{ lo, hi }, share]) => {
    const at = Math.min(hi, Math.max(lo, lo + (hi - lo) * share));
    return { within: { lo, hi }, at };
  });
const ratio = fc
  .tuple(
    fc.bigInt({ min: -(10n ** 20n), max: 10n ** 20n }),
    fc.bigInt({ min: 1n, max: 10n ** 20n }),
  )
  .map(([n, d]) => new Fraction(n, d));

/** Whether an exact number lies in a stretch of doubles, by exact comparison. */
function holds({ lo, hi }: Interval, value: Rational): boolean {
  return exactly(lo).compare(value) <= 0 && exactly(hi).compare(value) >= 0;
}

describe('intervals', () => {
  test('no sum, difference, product or quotient of numbers inside ever falls outside', () => {
    fc.assert(
      fc.property(inside, inside, (one, other) => {
        const [a, b] = [exactly(one.at), exactly(other.at)];
        expect(holds(add(one.within, other.within), a.add(b))).toBe(true);
        expect(holds(subtract(one.within, other.within), a.sub(b))).toBe(true);
        expect(holds(multiply(one.within, other.within), a.mul(b))).toBe(true);
        const { lo, hi } = other.within;
        if (lo > 1e-9 || hi < -1e-9) {
          expect(holds(divide(one.within, other.within), a.div(b))).toBe(true);
        }
      }),
      { numRuns: runs(2000) },
    );
  });

  test('an exact number is always inside of what encloses it, and a double is alone there', () => {
    fc.assert(
      fc.property(ratio, (value) => {
        const found = enclose(value);
        expect(holds(found, value)).toBe(true);
        expect(found.hi - found.lo).toBeLessThanOrEqual(Math.abs(value.valueOf()) * 1e-14);
      }),
      { numRuns: runs(2000) },
    );
    // One tenth is no double: the nearest lies above it.
    expect(enclose(rational(1, 10)).lo).toBeLessThan(0.1);
    expect(enclose(rational(13, 64))).toEqual({ lo: 0.203125, hi: 0.203125 });
    expect(enclose(rational(1, 3), rational(2, 3)).hi).toBeGreaterThan(2 / 3);
  });

  test('the neighbors of a double are its neighbors', () => {
    expect(nextUp(1)).toBe(1 + Number.EPSILON);
    expect(nextDown(1)).toBe(1 - Number.EPSILON / 2);
    expect(nextUp(0)).toBe(Number.MIN_VALUE);
    expect(nextDown(0)).toBe(-Number.MIN_VALUE);
    expect(nextUp(-1)).toBe(-(1 - Number.EPSILON / 2));
  });

  test('touching is meeting, and a gap of one double is not', () => {
    expect(meet(interval(1, 2), interval(2, 3))).toBe(true);
    expect(meet(interval(1, 2), interval(nextUp(2), 3))).toBe(false);
    expect(hull(interval(1, 2), interval(5, 6))).toEqual({ lo: 1, hi: 6 });
  });

  test('what is no number has no stretch, and nothing is divided by zero', () => {
    expect(() => interval(Number.NaN)).toThrow(RangeError);
    expect(() => interval(0, Number.POSITIVE_INFINITY)).toThrow(RangeError);
    expect(() => divide(interval(1), interval(-1, 1))).toThrow(RangeError);
    expect(() => divide(interval(1), interval(0, 1))).toThrow(RangeError);
    expect(() => monotone([interval(-1)], [1], Math.sqrt)).toThrow(RangeError);
  });

  test('a function that rises in one figure and falls in another keeps every sample', () => {
    const size = fc.double({ min: 0.01, max: 100, noNaN: true });
    fc.assert(
      fc.property(
        size,
        size,
        size,
        size,
        fc.double({ min: 0, max: 1, noNaN: true }),
        (a, b, c, d, t) => {
          const [x, y] = [interval(a, b), interval(c, d)];
          const at = ({ lo, hi }: Interval) => Math.min(hi, lo + (hi - lo) * t);
          const found = monotone([x, y], [1, -1], (one, other) => Math.sqrt(one) / other);
          const sample = Math.sqrt(at(x)) / at(y);
          expect(sample).toBeGreaterThanOrEqual(found.lo);
          expect(sample).toBeLessThanOrEqual(found.hi);
        },
      ),
    );
  });
});

describe('the plainest number of a stretch', () => {
  test('a double is exactly what it is', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-290, max: 1e300, noNaN: true }),
        fc.boolean(),
        (size, isBelow) => {
          const value = isBelow ? -size : size;
          expect(exactly(value).valueOf()).toBe(value);
        },
      ),
    );
    expect(exactly(0.1).d).toBe(2n ** 55n);
    expect(() => exactly(Number.NaN)).toThrow(RangeError);
  });

  test('what doubles leave of a ratio leads back to it', () => {
    const small = fc.tuple(
      fc.integer({ min: -99999, max: 99999 }),
      fc.integer({ min: 1, max: 9999 }),
    );
    fc.assert(
      fc.property(small, ([n, d]) => {
        const value = rational(n, d);
        expect(simplestIn(enclose(value)).equals(value)).toBe(true);
      }),
      { numRuns: runs(1000) },
    );
  });

  test('it lies in the stretch, and none with a smaller denominator does', () => {
    const bounds = fc.tuple(fc.integer({ min: 1, max: 4000 }), fc.integer({ min: 1, max: 400 }));
    fc.assert(
      fc.property(bounds, ([start, width]) => {
        const within = { lo: start / 997, hi: (start + width) / 997 };
        const found = simplestIn(within);
        expect(holds(within, found)).toBe(true);
        for (let d = 1; d < Number(found.d); d++) {
          const n = Math.ceil(within.lo * d);
          expect(n / d <= within.hi && n / d >= within.lo, `${n}/${d}`).toBe(false);
        }
      }),
    );
  });
});
