import type { Settled } from './model.ts';

/** How many errors were found by whom. */
export interface ErrorsFound {
  /** Settled for the second reading: the sheet was wrong. */
  readonly first: number;
  /** Settled for the sheet: the second reading was wrong. */
  readonly second: number;
  /** Both wrong, and found by a third look. */
  readonly both: number;
}

/** How many errors there probably were, and how many of them nobody found. */
export interface ErrorEstimate {
  /** All errors, by the estimate. */
  readonly all: number;
  readonly deviation: number;
  readonly left: number;
  /** 95 % interval of those left; its lower end is never less than none. */
  readonly low: number;
  readonly high: number;
}

/** With fewer differences an estimate says nothing. */
export const fewestDifferences = 5;

/** What the settled differences of some readings come to. */
export function errorsFound(settled: readonly Settled[]): ErrorsFound {
  const count = (word: Settled['for']) => settled.filter((each) => each.for === word).length;
  return { first: count('second'), second: count('first'), both: count('neither') };
}

/**
 * How many errors two readers have made where they read, capture and recapture: Chapman's estimate with
 * its variance by Seber (D. G. Chapman, 1951; G. A. F. Seber, The Estimation of Animal Abundance, second
 * edition 1982, 3.1.1; interval by the normal law). An error is caught by a reader who wrote it right.
 * Null with fewer than `fewestDifferences`.
 *
 * An error of the sheet that the second reader wrote right is caught by the second alone, and the other way
 * round; what both wrote wrong was caught by neither and seen all the same. So this takes the two lists of
 * errors as Lincoln and Petersen take two catches, and an error that is on both as marked.
 */
export function estimateErrors({ first, second, both }: ErrorsFound): ErrorEstimate | null {
  if (first + second + both < fewestDifferences) return null;
  return chapman(first + both, second + both, both, first + second + both);
}

/** Chapman's estimate of a population from two catches and those in both; `seen` are all that were met. */
export function chapman(one: number, two: number, both: number, seen: number): ErrorEstimate {
  const all = ((one + 1) * (two + 1)) / (both + 1) - 1;
  const variance =
    ((one + 1) * (two + 1) * (one - both) * (two - both)) / ((both + 1) ** 2 * (both + 2));
  const deviation = Math.sqrt(variance);
  const left = Math.max(0, all - seen);
  return {
    all,
    deviation,
    left,
    low: Math.max(0, all - 1.96 * deviation - seen),
    high: Math.max(left, all + 1.96 * deviation - seen),
  };
}
