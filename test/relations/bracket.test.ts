import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bracket } from '../../src/relations/bracket.ts';
import { multiply } from '../../src/relations/interval.ts';
import { runs } from '../suite/part.ts';

const cube = (x: number) => {
  const at = { lo: x, hi: x };
  return multiply(multiply(at, at), at);
};

describe('a root between two ends', () => {
  it('is enclosed, to the last places', () => {
    const root = bracket({ lo: 8, hi: 8 }, 0, 10, cube);
    expect(root.lo).toBeLessThanOrEqual(2);
    expect(root.hi).toBeGreaterThanOrEqual(2);
    expect(root.hi - root.lo).toBeLessThan(1e-14);
  });

  it('is never outside, whatever the target', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 9, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (least, width, share) => {
          const from = cube(least).lo;
          const to = cube(least + width).hi;
          const root = bracket({ lo: from, hi: to }, 0, 10, cube);
          const inside = least + share * width;
          expect(root.lo).toBeLessThanOrEqual(inside);
          expect(root.hi).toBeGreaterThanOrEqual(inside);
        },
      ),
      { numRuns: runs(2000) },
    );
  });

  it('reaches an end where the function stays level, or meets the target at the end', () => {
    const level = (x: number) => cube(Math.min(x, 2));
    expect(bracket({ lo: 8, hi: 8 }, 0, 10, level).hi).toBe(10);
    expect(bracket({ lo: 0, hi: 8 }, 0, 10, cube).lo).toBe(0);
    expect(bracket({ lo: 8, hi: 2000 }, 0, 10, cube).hi).toBe(10);
  });

  it('is the nearer end where the target lies beyond', () => {
    expect(bracket({ lo: 1001, hi: 1002 }, 0, 10, cube)).toEqual({ lo: 10, hi: 10 });
    expect(bracket({ lo: 0.5, hi: 0.9 }, 1, 10, cube)).toEqual({ lo: 1, hi: 1 });
  });
});
