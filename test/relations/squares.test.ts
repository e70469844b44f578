import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rational } from '../../src/quantity/index.ts';
import type { Rational } from '../../src/quantity/model.ts';
import { PI, square, squareRoot, squaresApart } from '../../src/relations/squares.ts';

const positive = fc.double({ min: 1e-6, max: 1e6, noNaN: true });

/** A double without the approximation by which `rational` reads one: over a power of two. */
function exact(value: number): Rational {
  let [numerator, denominator] = [value, 1n];
  while (!Number.isInteger(numerator)) [numerator, denominator] = [numerator * 2, denominator * 2n];
  return rational(BigInt(numerator), denominator);
}

describe('squares and roots', () => {
  it('holds π between two doubles', () => {
    // 3.14159265358979323846, from memory.
    expect(exact(PI.lo).compare(rational('3.14159265358979323846'))).toBe(-1);
    expect(exact(PI.hi).compare(rational('3.14159265358979323846'))).toBe(1);
  });

  it('holds the exact square and the number that a root came from', () => {
    fc.assert(
      fc.property(positive, (value) => {
        const squared = square({ lo: value, hi: value });
        const right = exact(value).mul(exact(value));
        expect(exact(squared.lo).compare(right)).toBeLessThanOrEqual(0);
        expect(exact(squared.hi).compare(right)).toBeGreaterThanOrEqual(0);
        const root = squareRoot(squared);
        expect(root.lo).toBeLessThanOrEqual(value);
        expect(root.hi).toBeGreaterThanOrEqual(value);
      }),
    );
  });

  it('holds the exact difference of two squares, however close', () => {
    fc.assert(
      fc.property(positive, fc.double({ min: 0, max: 1e-9, noNaN: true }), (value, more) => {
        const other = value * (1 + more);
        const apart = squaresApart({ lo: other, hi: other }, { lo: value, hi: value });
        const right = exact(other)
          .mul(exact(other))
          .sub(exact(value).mul(exact(value)));
        expect(exact(apart.lo).compare(right)).toBeLessThanOrEqual(0);
        expect(exact(apart.hi).compare(right)).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  it('cuts a root at zero', () => {
    expect(squareRoot({ lo: -1, hi: 4 })).toEqual({ lo: 0, hi: expect.closeTo(2, 12) });
    expect(squareRoot({ lo: -2, hi: -1 })).toEqual({ lo: 0, hi: 0 });
  });
});
