import { add, multiply, nextDown, nextUp, subtract } from './interval.ts';
import type { Interval } from './model.ts';

/** The double below π, and the one above it. */
export const PI: Interval = { lo: Math.PI, hi: nextUp(Math.PI) };

/** π/4, outward. */
export const QUARTER_PI: Interval = { lo: PI.lo / 4, hi: PI.hi / 4 };

/** The square of what is not negative, outward. */
export function square({ lo, hi }: Interval): Interval {
  return { lo: Math.max(0, nextDown(lo * lo)), hi: nextUp(hi * hi) };
}

/** The root of what is not negative, outward; a stretch that begins below zero is cut there. */
export function squareRoot({ lo, hi }: Interval): Interval {
  return {
    lo: lo <= 0 ? 0 : Math.max(0, nextDown(Math.sqrt(lo))),
    hi: hi <= 0 ? 0 : nextUp(Math.sqrt(hi)),
  };
}

/** One end of a stretch as a stretch of its own, for a formula asked at its corners. */
export function point(value: number): Interval {
  return { lo: value, hi: value };
}

/** One square less another, of what is not negative: as product, so that close ones lose no places. */
export function squaresApart(one: Interval, other: Interval): Interval {
  const apart = (a: Interval, b: Interval) => multiply(subtract(a, b), add(a, b));
  return {
    lo: apart(point(one.lo), point(other.hi)).lo,
    hi: apart(point(one.hi), point(other.lo)).hi,
  };
}
