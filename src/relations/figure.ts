import { principal } from '../quantity/index.ts';
import type { Rational, Statement } from '../quantity/model.ts';
import { enclose, hull } from './interval.ts';
import type { Interval } from './model.ts';

/** A quantity's size as stretches of base units. One of `nominal` and `limits` is there at least. */
export interface Figure {
  /** The figure itself, as narrow as doubles allow; null where only limits are known. */
  readonly point: Interval | null;
  /** Everything that the figure may be a rounding of; null where only limits are known. */
  readonly nominal: Interval | null;
  /** From the lower to the upper limit; null where there are none, or one only. */
  readonly limits: Interval | null;
  /** Whether the figure is a lone limit, with everything above (`min`) or below (`max`) it. */
  readonly side: 'min' | 'max' | null;
}

/** The stretches of a statement; null for a condition. */
export function figureOf(statement: Statement): Figure | null {
  const { low, high } = statement;
  const one = principal(statement);
  if (!one && !(low && high)) return null;
  return {
    point: one && enclose(one.base),
    nominal: one && enclose(one.could.low, one.could.high),
    limits: low && high ? enclose(low.base, high.base) : null,
    side: low && !high ? 'min' : high && !low ? 'max' : null,
  };
}

/** A figure without limits: exact where the stretch has no width. */
export function figureIn(stretch: Interval): Figure {
  const exact = stretch.lo === stretch.hi;
  return exact
    ? { point: stretch, nominal: stretch, limits: null, side: null }
    : { point: null, nominal: null, limits: stretch, side: null };
}

/** An exact number as a figure. */
export function exactFigure(value: Rational): Figure {
  const point = enclose(value);
  return { point, nominal: point, limits: null, side: null };
}

/** Everything that a figure can be, its limits and its rounding together; open where it is a lone limit. */
export function reachOf({ nominal, limits, side }: Figure): Interval {
  const stretch = nominal && limits ? hull(nominal, limits) : (limits ?? nominal);
  const { lo, hi } = stretch ?? { lo: Number.NEGATIVE_INFINITY, hi: Number.POSITIVE_INFINITY };
  return {
    lo: side === 'max' ? Number.NEGATIVE_INFINITY : lo,
    hi: side === 'min' ? Number.POSITIVE_INFINITY : hi,
  };
}

/** Whether nothing about a figure is left open: it has no limits and is no rounding. */
export function isExact({ point, nominal, limits, side }: Figure): boolean {
  if (!point || !nominal || limits || side) return false;
  return nominal.lo >= point.lo && nominal.hi <= point.hi;
}
